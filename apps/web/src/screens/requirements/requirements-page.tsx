import { type RequirementStatus, traceOf } from '@coveline/review';
import { useMemo, useState } from 'react';
import { m } from '../../messages/index.ts';
import { Choice } from '../../shell/choice.tsx';
import { useRequirements } from '../../state/queries.ts';
import { useMachineData } from '../machine/machine-context.ts';
import { WalkTabs } from '../walk/walk-tabs.tsx';
import { CoverageTable } from './coverage-table.tsx';
import { PacksSection } from './packs-section.tsx';
import { RequirementRow } from './requirement-row.tsx';
import './requirements.css';

type Status = RequirementStatus['status'];
const order: readonly Status[] = ['notMet', 'notShown', 'met', 'noSuchElement'];

/** Every requirement of the yardstick with its status and how that came about. */
export function RequirementsPage() {
  const { machine, review, decisions, route } = useMachineData();
  const catalogue = useRequirements(machine.id).data ?? [];
  const trace = useMemo(() => (review ? traceOf(review, decisions) : null), [review, decisions]);
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
      {review && trace ? (
        <>
          <CoverageTable coverage={trace.coverage} />
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
                  trace={trace.rows.find((r) => r.requirement === line.requirement)!}
                  named={route.item === line.requirement}
                />
              ))}
            </tbody>
          </table>
        </>
      ) : null}
      <PacksSection />
    </div>
  );
}
