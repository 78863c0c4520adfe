import type { Breach } from '@coveline/review';
import { m } from '../../messages/index.ts';
import { useSources } from '../../state/queries.ts';
import { useMachineData } from '../machine/machine-context.ts';

/** Rules that the steps break, dangerous ones first. */
export function Breaches({ breaches }: { readonly breaches: readonly Breach[] }) {
  const { machine } = useMachineData();
  const sources = useSources(machine.id).data ?? [];
  const words = m.cleaning;
  if (breaches.length === 0) return <p className="soft">{words.noBreach}</p>;
  return (
    <>
      <h3>{words.breaches}</h3>
      <ul className="breaches">
        {breaches.map(({ rule, step, text }) => (
          <li key={`${rule.id}${step}`}>
            <strong>
              {rule.danger ? `${words.danger} · ` : ''}
              {text}
            </strong>
            <span className="soft">
              {[
                step === null ? null : words.atStep(step + 1),
                `${rule.text} ${rule.why}`,
                sources.find((s) => s.key === rule.citation.source)?.title ?? rule.citation.source,
                rule.citation.clause,
              ]
                .filter((t) => t !== null)
                .join(' · ')}
            </span>
          </li>
        ))}
      </ul>
    </>
  );
}
