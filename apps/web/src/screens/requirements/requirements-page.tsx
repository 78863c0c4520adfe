import type { Requirement } from '@coveline/catalogue';
import type { RequirementStatus } from '@coveline/review';
import { useState } from 'react';
import { m } from '../../messages/index.ts';
import { Link } from '../../routing/link.tsx';
import { Choice } from '../../shell/choice.tsx';
import { useRequirements, useSources } from '../../state/queries.ts';
import { useMachineData } from '../machine/machine-context.ts';
import { WalkTabs } from '../walk/walk-tabs.tsx';
import './requirements.css';

type Status = RequirementStatus['status'];
const order: readonly Status[] = ['notMet', 'notShown', 'met', 'noSuchElement'];

/** Every requirement of the yardstick with its status and how that came about. */
export function RequirementsPage() {
  const { review } = useMachineData();
  const catalogue = useRequirements().data ?? [];
  const [status, setStatus] = useState('all');
  const lines = review?.requirements ?? [];
  const shown = [...lines]
    .filter((line) => status === 'all' || line.status === status)
    .sort((a, b) => order.indexOf(a.status) - order.indexOf(b.status));
  const columns = m.requirements.columns;
  return (
    <div className="page page-wide">
      <WalkTabs />
      <h1>{m.requirements.title}</h1>
      <p className="soft">{m.requirements.intro}</p>
      {review ? null : <p className="empty">{m.walk.notReviewed}</p>}
      {review ? (
        <>
          <div className="filters">
            <Choice
              label={m.requirements.filterStatus}
              value={status}
              options={[
                ['all', `${m.requirements.all} (${lines.length})`],
                ...order.map(
                  (s) => [s, `${m.statuses[s]} (${lines.filter((l) => l.status === s).length})`] as const,
                ),
              ]}
              onChange={setStatus}
            />
          </div>
          <table className="sheet-table requirements">
            <thead>
              <tr>
                <th scope="col">{columns.requirement}</th>
                <th scope="col">{columns.status}</th>
                <th scope="col">{columns.basis}</th>
                <th scope="col">{columns.source}</th>
                <th scope="col">{columns.findings}</th>
              </tr>
            </thead>
            <tbody>
              {shown.map((line) => (
                <RequirementRow
                  key={line.requirement}
                  line={line}
                  requirement={catalogue.find((r) => r.id === line.requirement)}
                />
              ))}
            </tbody>
          </table>
        </>
      ) : null}
    </div>
  );
}

/** Findings that are listed at once with a requirement. */
const few = 3;

function FindingLinks({ ids }: { readonly ids: readonly string[] }) {
  const { route, findings } = useMachineData();
  return (
    <ul className="plain">
      {ids.map((id) => (
        <li key={id}>
          <Link to={{ ...route, page: 'walk', item: id }}>
            {findings.find((f) => f.id === id)?.title ?? id}
          </Link>
        </li>
      ))}
    </ul>
  );
}

interface RowProps {
  readonly line: RequirementStatus;
  readonly requirement: Requirement | undefined;
}

function RequirementRow({ line, requirement }: RowProps) {
  const sources = useSources().data ?? [];
  const title = (key: string) => sources.find((s) => s.key === key)?.title ?? key;
  return (
    <tr>
      <td>{requirement?.text ?? line.requirement}</td>
      <td className={`status status-${line.status}`}>{m.statuses[line.status]}</td>
      <td>{line.basis}</td>
      <td>
        {requirement ? `${m.demandKinds[requirement.kind]} · ` : ''}
        {requirement?.citations.map((c) => `${title(c.source)}${c.clause ? `, ${c.clause}` : ''}`).join('; ')}
      </td>
      <td>
        <FindingLinks ids={line.findings.slice(0, few)} />
        {line.findings.length > few ? (
          <details>
            <summary>{m.requirements.more(line.findings.length - few)}</summary>
            <FindingLinks ids={line.findings.slice(few)} />
          </details>
        ) : null}
      </td>
    </tr>
  );
}
