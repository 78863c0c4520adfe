import { asksForLess, hazardsOf } from '@coveline/review';
import { m } from '../../messages/index.ts';
import { useSources } from '../../state/queries.ts';
import { useMachineData } from '../machine/machine-context.ts';
import type { SectionProps } from './brief-page.tsx';

/** What the products of the brief can do to people, and the level of care that follows. */
export function HazardsSection({ brief }: Pick<SectionProps, 'brief'>) {
  const { machine } = useMachineData();
  const sources = useSources(machine.id).data ?? [];
  const words = m.hazards;
  const found = hazardsOf(brief);
  const title = (key: string) => sources.find((s) => s.key === key)?.title ?? key;
  return (
    <section className="hazards">
      <h2>{words.title}</h2>
      {brief.products.length === 0 ? (
        <p>{words.none}</p>
      ) : (
        <>
          <p>
            <strong>{words.proposed(m.brief.careLevels[found.careLevel])}</strong>
          </p>
          {asksForLess(brief, found) ? <p className="missing">{words.less}</p> : null}
          <ul>
            {found.hazards.map((h) => (
              <li key={h.id}>
                {h.text}{' '}
                <span className="soft">
                  {[
                    words.kinds[h.kind],
                    h.products.join(', '),
                    `${title(h.citation.source)}, ${h.citation.clause}`,
                    m.standings[h.citation.standing],
                    h.authority ? words.authority : '',
                  ]
                    .filter((t) => t !== '')
                    .join(' · ')}
                </span>
              </li>
            ))}
          </ul>
          {found.assumptions.length > 0 ? (
            <details>
              <summary>{words.assumed}</summary>
              <ul>
                {found.assumptions.map((a) => (
                  <li key={a}>{a}</li>
                ))}
              </ul>
            </details>
          ) : null}
        </>
      )}
    </section>
  );
}
