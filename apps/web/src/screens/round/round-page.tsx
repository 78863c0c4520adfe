import { useState } from 'react';
import { m } from '../../messages/index.ts';
import { Choice } from '../../shell/choice.tsx';
import { WordsField } from '../../shell/words-field.tsx';
import { setPreferences, usePreferences } from '../../state/preferences.ts';
import { useMachineData } from '../machine/machine-context.ts';
import { WalkTabs } from '../walk/walk-tabs.tsx';
import { StopSection } from './stop-section.tsx';
import './round.css';

/** What geometry cannot show, asked in the order in which somebody walks up the machine. */
export function RoundPage() {
  const { review } = useMachineData();
  const { name } = usePreferences();
  const [only, setOnly] = useState<'open' | 'all'>('all');
  const words = m.round;
  const round = review?.round;
  return (
    <div className="page round">
      <WalkTabs />
      <h1>{words.title}</h1>
      <p className="soft">{words.intro}</p>
      <p className="caution">{words.caution}</p>
      {round ? (
        <>
          <div className="round-head">
            <WordsField
              label={words.who}
              hint={words.whoHint}
              value={name}
              onChange={(next) => setPreferences({ name: next })}
            />
            <Choice
              label={words.only}
              value={only}
              options={[
                ['all', words.onlyAll],
                ['open', words.onlyOpen],
              ]}
              onChange={(value) => setOnly(value === 'open' ? 'open' : 'all')}
            />
            <p>
              <progress value={round.answered} max={round.items} aria-label={words.title} />{' '}
              {words.progress(round.answered, round.items)}
            </p>
          </div>
          {round.stops.map((stop) => (
            <StopSection key={stop.about} stop={stop} onlyOpen={only === 'open'} />
          ))}
        </>
      ) : (
        <p className="empty">{words.notReviewed}</p>
      )}
    </div>
  );
}
