import { type CalculationEntry, type Outcome, refusalSentence, type TypedRun } from '@coveline/engineering';
import { m } from '../../messages/index.ts';
import { show } from '../../numbers/show.ts';
import { capital, sentence } from './sentence.ts';

interface Props {
  readonly entry: CalculationEntry;
  readonly run: TypedRun | null;
  readonly underWay: boolean;
  readonly fault: string | null;
  /** Whether nothing was typed yet: then a missing value is no mistake. */
  readonly untouched: boolean;
}

/** The result in large, or the one sentence that says what was expected. */
export function Answer({ entry, run, underWay, fault, untouched }: Props) {
  const outcome = run?.outcome;
  return (
    <section className="calc-answer" aria-label={m.calculations.result} aria-busy={underWay}>
      <div role="status">
        {fault === null ? null : <p className="calc-refusal">{sentence(fault)}</p>}
        {outcome?.kind === 'done' ? <Result outcome={outcome} /> : null}
        {run && outcome?.kind === 'refused' ? (
          <p className={untouched ? 'soft' : 'calc-refusal'}>
            {untouched ? m.calculations.waiting : refusalSentence(entry, run)}
          </p>
        ) : null}
      </div>
      {underWay ? <p className="calc-under-way soft">{m.calculations.working}</p> : null}
    </section>
  );
}

function Result({ outcome }: { readonly outcome: Extract<Outcome, { kind: 'done' }> }) {
  const { result } = outcome.working;
  return (
    <>
      <p className="calc-answer-name">
        {capital(result.name)} <i>{result.symbol}</i>
      </p>
      <p className="calc-answer-value figure">
        {result.text ? capital(result.text) : show(result.value, result.unit, 4)}
      </p>
      {outcome.warnings.map((warning) => (
        <p key={warning} className="calc-note">
          <b>{m.calculations.note}</b> {warning}
        </p>
      ))}
    </>
  );
}
