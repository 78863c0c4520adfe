import { findCalculation, type Inputs, inputName, type RunAgain } from '@coveline/engineering';
import type { Command, KeptCalculation } from '@coveline/project';
import { useId } from 'react';
import { Button } from 'react-aria-components';
import { m } from '../../messages/index.ts';
import { show } from '../../numbers/show.ts';
import { Link } from '../../routing/link.tsx';
import { capital } from '../calculations/sentence.ts';
import { useMachineData } from '../machine/machine-context.ts';
import { WorkingView } from '../walk/slip/working-view.tsx';
import { KeptChange } from './kept-change.tsx';

export type KeptChanged = NonNullable<Extract<Command, { do: 'setCalculation' }>['kept']>;

interface Props {
  readonly kept: KeptCalculation;
  /** As the file counts them. */
  readonly number: number;
  /** Null while it is worked out. */
  readonly again: RunAgain | null;
  readonly onChange: (next: KeptChanged) => void;
  readonly onRemove: () => void;
}

/** One kept calculation: its number or the sentence in its place, what was typed, and what can be done. */
export function KeptItem({ kept, number, again, onChange, onRemove }: Props) {
  const { machine, findings, route } = useMachineData();
  const title = useId();
  const entry = findCalculation(kept.calculation);
  const { id: _, ...rest } = kept;
  const finding = findings.find((f) => f.id === kept.about?.finding);
  const working = again?.run?.outcome.kind === 'done' ? again.run.outcome.working : null;
  return (
    <article className="kept" aria-labelledby={title}>
      <div className="kept-words">
        <h2 id={title}>
          <span className="soft">{m.keep.number(number)}</span> {kept.title}
        </h2>
        <p className="soft">{entry?.title ?? kept.calculation}</p>
        {kept.note ? <p>{kept.note}</p> : null}
        {finding ? (
          <p>
            {m.keep.finding} <Link to={{ ...route, page: 'walk', item: finding.id }}>{finding.title}</Link>
          </p>
        ) : null}
        <Typed kept={kept} inputs={entry?.inputs ?? {}} />
      </div>
      <div className="kept-result" aria-busy={again === null}>
        <Result again={again} />
        {again?.changed ? (
          <p className="kept-changed">
            {m.keep.changed(inWords(kept.gave), inWords(again.gives))}{' '}
            <Button className="quiet" onPress={() => onChange({ ...rest, gave: again.gives })}>
              {m.keep.takeNew}
            </Button>
          </p>
        ) : null}
        <p className="kept-does">
          {entry ? (
            <Link
              className="button outlined"
              to={{ at: 'calculations', name: kept.calculation, kept: { machine: machine.id, id: kept.id } }}
              aria-label={m.keep.openNamed(kept.title)}
            >
              {m.keep.open}
            </Link>
          ) : null}
          <Button className="quiet" aria-label={m.keep.removeNamed(kept.title)} onPress={onRemove}>
            {m.keep.remove}
          </Button>
        </p>
      </div>
      <details className="kept-more">
        <summary>{m.keep.change}</summary>
        <KeptChange kept={kept} onChange={onChange} />
      </details>
      {working ? (
        <details className="kept-more">
          <summary>{m.keep.working}</summary>
          <WorkingView working={working} />
        </details>
      ) : null}
    </article>
  );
}

function Result({ again }: Pick<Props, 'again'>) {
  if (again === null) return <p className="soft">{m.calculations.working}</p>;
  const outcome = again.run?.outcome;
  if (outcome?.kind !== 'done')
    return (
      <p className="kept-refusal">
        <b>{m.keep.noNumber}</b> {again.refusal}
      </p>
    );
  const { result } = outcome.working;
  return (
    <>
      <p>
        <span className="soft">
          {capital(result.name)} <i>{result.symbol}</i>
        </span>
        <strong className="kept-number figure">
          {result.text ? capital(result.text) : show(result.value, result.unit, 4)}
        </strong>
      </p>
      {outcome.warnings.map((warning) => (
        <p key={warning}>
          <b>{m.calculations.note}</b> {warning}
        </p>
      ))}
    </>
  );
}

/** What was typed, with the label of its field where that is known. */
function Typed({ kept, inputs }: Pick<Props, 'kept'> & { readonly inputs: Inputs }) {
  const labels = Object.entries(inputs).map(([key, input]) => [inputName(key), input.label] as const);
  return (
    <dl className="kept-typed" aria-label={m.keep.typed}>
      {Object.entries(kept.inputs).map(([name, text]) => (
        <div key={name}>
          <dt>{labels.find(([known]) => known === name)?.[1] ?? name}</dt>
          <dd>{text.length > 80 ? `${text.slice(0, 79)}…` : text}</dd>
        </div>
      ))}
    </dl>
  );
}

const inWords = (gave: KeptCalculation['gave']) => (gave ? show(gave.value, gave.unit, 4) : m.keep.nothing);
