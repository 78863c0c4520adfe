import type { ModelHealth } from '@coveline/survey';
import { Button } from 'react-aria-components';
import { m } from '../../messages/index.ts';
import { setView } from '../../stage/view-state.ts';
import { useViewer } from '../../stage/viewer-context.ts';

/** What is wrong with the model itself, before anything is read off it; each fault leads to its parts. */
export function HealthSection({ health }: { readonly health: ModelHealth }) {
  const viewer = useViewer();
  return (
    <section className="health" aria-label={m.parts.health.title}>
      <p>{m.parts.health.closed(health.closedParts, health.parts)}</p>
      {health.faults.length > 0 ? (
        <ul>
          {health.faults.map(({ kind, parts, text }) => (
            <li key={kind}>
              {text}{' '}
              <Button
                className="quiet"
                aria-label={m.parts.health.showParts(parts.length)}
                onPress={() => {
                  setView({ chosen: parts });
                  viewer?.fit(parts);
                }}
              >
                {m.parts.health.show}
              </Button>
            </li>
          ))}
        </ul>
      ) : null}
    </section>
  );
}
