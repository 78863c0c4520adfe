import type { RoundStop } from '@coveline/review';
import { useState } from 'react';
import { m } from '../../messages/index.ts';
import { showWhole } from '../../numbers/show.ts';
import { useMachineData } from '../machine/machine-context.ts';
import { ItemCard } from './item-card.tsx';

interface Props {
  readonly stop: RoundStop;
  readonly onlyOpen: boolean;
}

/** One element of the machine, folded until somebody stands before it. */
export function StopSection({ stop, onlyOpen }: Props) {
  const { route } = useMachineData();
  const [open, setOpen] = useState(stop.items.some((i) => i.id === route.item));
  const words = m.round;
  const done = stop.items.filter((i) => i.answer !== null).length;
  const height = stop.height_mm === null ? null : showWhole(stop.height_mm);
  const shown = onlyOpen ? stop.items.filter((i) => i.answer === null) : stop.items;
  return (
    <details className="stop" open={open} onToggle={(e) => setOpen(e.currentTarget.open)}>
      <summary>
        <h2>{stop.name}</h2>
        <span className="soft">{words.stopFacts(height, done, stop.items.length)}</span>
      </summary>
      {open ? (
        shown.length === 0 ? (
          <p className="empty">{words.allDone}</p>
        ) : (
          shown.map((item) => <ItemCard key={item.id} item={item} />)
        )
      ) : null}
    </details>
  );
}
