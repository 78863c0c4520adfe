import type { Requirement } from '@coveline/catalogue';
import type { RequirementStatus, TraceRow } from '@coveline/review';
import { useEffect, useId, useRef, useState } from 'react';
import { m } from '../../messages/index.ts';
import { Link } from '../../routing/link.tsx';
import { useSources } from '../../state/queries.ts';
import { useMachineData } from '../machine/machine-context.ts';
import { TraceDetails } from './trace-details.tsx';

interface Props {
  readonly line: RequirementStatus;
  readonly requirement: Requirement | undefined;
  readonly trace: TraceRow;
  /** Whether the address names this requirement. */
  readonly named: boolean;
}

/** Findings that are listed at once with a requirement. */
const few = 3;

/** One requirement, which unfolds to all that hangs on it. */
export function RequirementRow({ line, requirement, trace, named }: Props) {
  const { machine, route, findings } = useMachineData();
  const sources = useSources(machine.id).data ?? [];
  const [open, setOpen] = useState(named);
  const row = useRef<HTMLTableRowElement>(null);
  const details = useId();
  const words = m.requirements;
  const title = (key: string) => sources.find((s) => s.key === key)?.title ?? key;
  const text = requirement?.text ?? line.requirement;
  useEffect(() => {
    if (named) row.current?.scrollIntoView({ block: 'center' });
  }, [named]);
  const shown = line.findings.length > few ? words.more(line.findings.length - few) : words.follow;
  return (
    <>
      <tr ref={row}>
        <td>{text}</td>
        <td className={`status status-${line.status}`}>{m.statuses[line.status]}</td>
        <td>{line.basis}</td>
        <td>
          {requirement ? `${m.demandKinds[requirement.kind]} · ` : ''}
          {requirement?.citations
            .map((c) => `${title(c.source)}${c.clause ? `, ${c.clause}` : ''}`)
            .join('; ')}
        </td>
        <td>
          <ul className="plain">
            {line.findings.slice(0, few).map((id) => (
              <li key={id}>
                <Link to={{ ...route, page: 'walk', item: id }}>
                  {findings.find((f) => f.id === id)?.title ?? id}
                </Link>
              </li>
            ))}
          </ul>
          <button
            type="button"
            className="quiet"
            aria-expanded={open}
            aria-controls={details}
            aria-label={words.followNamed(shown, text)}
            onClick={() => setOpen(!open)}
          >
            {shown}
          </button>
        </td>
      </tr>
      {open ? (
        <tr id={details} className="trace-row">
          <td colSpan={5}>
            <TraceDetails row={trace} />
          </td>
        </tr>
      ) : null}
    </>
  );
}
