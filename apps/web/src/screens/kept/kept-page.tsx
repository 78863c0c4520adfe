import { useRef } from 'react';
import { m } from '../../messages/index.ts';
import { Link } from '../../routing/link.tsx';
import { announce } from '../../state/announce.ts';
import { useChange } from '../../state/changes.ts';
import { useMachineData } from '../machine/machine-context.ts';
import { KeptItem } from './kept-item.tsx';
import { useKeptRuns } from './use-kept-runs.ts';
import './kept.css';

/** The calculations that are kept with a machine, each with what it gives now. */
export function KeptPage() {
  const { machine } = useMachineData();
  const { calculations } = machine.project;
  const runs = useKeptRuns(calculations);
  const change = useChange(machine.id);
  const heading = useRef<HTMLHeadingElement>(null);
  return (
    <div className="page page-wide">
      <h1 ref={heading} tabIndex={-1}>
        {m.calculations.title}
      </h1>
      <p className="soft">{m.keep.intro}</p>
      <p>
        <Link to={{ at: 'calculations', name: null, kept: null }}>{m.keep.find}</Link>
      </p>
      {calculations.length === 0 ? <p className="empty">{m.keep.none}</p> : null}
      <ol className="plain kept-list">
        {calculations.map((kept, i) => (
          <li key={kept.id}>
            <KeptItem
              kept={kept}
              number={i + 1}
              again={runs.get(kept.id) ?? null}
              onChange={(next) => change.mutate({ do: 'setCalculation', calculation: kept.id, kept: next })}
              onRemove={() => {
                change.mutate({ do: 'setCalculation', calculation: kept.id, kept: null });
                announce(m.keep.removed(kept.title));
                heading.current?.focus();
              }}
            />
          </li>
        ))}
      </ol>
    </div>
  );
}
