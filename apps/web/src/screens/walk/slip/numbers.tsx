import type { FindingNumber } from '@coveline/review';
import { useId, useState } from 'react';
import { m } from '../../../messages/index.ts';
import { show } from '../../../numbers/show.ts';
import { WorkingView } from './working-view.tsx';

/** The numbers of a finding in a row; each opens its working below the row. */
export function Numbers({ numbers }: { readonly numbers: readonly FindingNumber[] }) {
  const [open, setOpen] = useState<number | null>(null);
  const panel = useId();
  if (numbers.length === 0) return null;
  return (
    <section className="numbers" aria-label={m.slip.numbers}>
      <div className="numbers-row">
        {numbers.map((n, index) => (
          <button
            key={n.label}
            type="button"
            className="number"
            aria-expanded={open === index}
            aria-controls={panel}
            onClick={() => setOpen(open === index ? null : index)}
          >
            <strong>{show(n.value, n.unit)}</strong>
            <small>{n.label}</small>
            <span className="unseen">, {m.slip.working}</span>
          </button>
        ))}
      </div>
      <div id={panel} className="working" hidden={open === null}>
        {open === null ? null : <WorkingView working={numbers[open].working} />}
      </div>
    </section>
  );
}
