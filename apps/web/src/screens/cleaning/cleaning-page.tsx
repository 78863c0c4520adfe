import type { GroupReview } from '@coveline/review';
import { m } from '../../messages/index.ts';
import { show, showCount } from '../../numbers/show.ts';
import { useMachineData } from '../machine/machine-context.ts';
import { Numbers } from '../walk/slip/numbers.tsx';
import { GroupSection } from './group-section.tsx';
import './cleaning.css';

/** How every surface is cleaned, what is wrong with the steps, and what all of it takes. */
export function CleaningPage() {
  const { review } = useMachineData();
  const words = m.cleaning;
  if (!review)
    return (
      <div className="page">
        <h1>{words.title}</h1>
        <p className="empty">{words.notReviewed}</p>
      </div>
    );
  const { groups, resources, uncleaned } = review.cleaning;
  return (
    <div className="page page-wide cleaning">
      <h1>{words.title}</h1>
      <p className="soft">{words.intro}</p>
      <p className="caution">{words.caution}</p>
      {resources ? (
        <section>
          <h2>{words.takes}</h2>
          <Numbers numbers={resources.numbers} />
          <p className="soft">{words.runs(showCount(Math.round(resources.runs_1yr)))}</p>
          {resources.open.length > 0 ? (
            <details>
              <summary>
                {words.notCounted} ({resources.open.length})
              </summary>
              <ul>
                {resources.open.map((text) => (
                  <li key={text}>{text}</li>
                ))}
              </ul>
            </details>
          ) : null}
        </section>
      ) : null}
      {uncleaned.length > 0 ? <p className="missing">{words.uncleaned(uncleaned.length)}</p> : null}
      {groups.map((g) => (
        <GroupSection key={g.group.id} review={g} all={groups} />
      ))}
    </div>
  );
}

export const minutesOf = ({ minutes }: GroupReview): string =>
  m.cleaning.minutes(show(Math.round(minutes), '1', 4));
