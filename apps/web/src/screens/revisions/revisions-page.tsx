import type { FindingChange, RevisionComparison } from '@coveline/review';
import { useState } from 'react';
import { m } from '../../messages/index.ts';
import { show } from '../../numbers/show.ts';
import { Choice } from '../../shell/choice.tsx';
import { useChange } from '../../state/changes.ts';
import { useSince } from '../../state/queries.ts';
import { useMachineData } from '../machine/machine-context.ts';
import { WalkTabs } from '../walk/walk-tabs.tsx';
import { ChangeTable } from './change-table.tsx';

const order = ['new', 'worse', 'unchanged', 'better', 'mended'] as const;

/** What became of the findings of another revision, and which of its decisions still hold. */
export function RevisionsPage() {
  const { machine, revision, at } = useMachineData();
  const words = m.revisions;
  const others = machine.revisions.filter((r) => r.id !== revision?.id);
  const [chosen, setChosen] = useState<string | null>(null);
  const before = chosen ?? others.filter((r) => r.surveyedAt).at(-1)?.id ?? null;
  const { data } = useSince(at, before);
  return (
    <div className="page page-wide">
      <WalkTabs />
      <h1>{words.title}</h1>
      <p className="soft">{words.intro}</p>
      {others.length === 0 ? (
        <p className="empty">{words.onlyOne}</p>
      ) : (
        <div className="filters">
          <Choice
            label={words.before}
            value={before}
            options={others.map((r) => [r.id, r.label] as const)}
            onChange={setChosen}
          />
        </div>
      )}
      {others.length > 0 && before === null ? <p className="empty">{words.notYet}</p> : null}
      {data ? <Comparison data={data} /> : null}
    </div>
  );
}

function Comparison({ data }: { readonly data: RevisionComparison }) {
  const { machine, revision } = useMachineData();
  const change = useChange(machine.id);
  const words = m.revisions;
  const carry = (c: FindingChange) =>
    revision &&
    c.after &&
    c.carried &&
    change.mutate({ do: 'decide', revision: revision.id, finding: c.after.id, decision: c.carried.decision });
  const standing = data.findings.filter((c) => c.carried?.stands);
  const { renamed, split, added, removed } = data.parts;
  return (
    <>
      <Totals totals={data.totals} />
      <h2>{words.parts}</h2>
      <p>
        {[
          words.renamed(renamed.length),
          words.split(split.length),
          words.added(added.length),
          words.removed(removed.length),
        ].join(' · ')}
      </p>
      {standing.length > 0 ? (
        <button type="button" className="outlined" onClick={() => standing.forEach(carry)}>
          {words.carryAll(standing.length)}
        </button>
      ) : null}
      {order.map((kind) => (
        <ChangeTable
          key={kind}
          kind={kind}
          changes={data.findings.filter((c) => c.change === kind)}
          onCarry={carry}
        />
      ))}
    </>
  );
}

function Totals({ totals }: Pick<RevisionComparison, 'totals'>) {
  const words = m.revisions;
  const { columns } = words;
  const value = (v: number | null, unit: string) => (v === null ? words.notKnown : show(v, unit));
  return (
    <section>
      <h2>{words.totals}</h2>
      <table className="sheet-table">
        <caption className="unseen">{words.totals}</caption>
        <thead>
          <tr>
            <th scope="col">{columns.what}</th>
            <th scope="col">{columns.before}</th>
            <th scope="col">{columns.after}</th>
            <th scope="col">{columns.change}</th>
          </tr>
        </thead>
        <tbody>
          {totals.map(({ label, unit, before, after }) => (
            <tr key={label}>
              <th scope="row">{label}</th>
              <td className="figure">{value(before, unit)}</td>
              <td className="figure">{value(after, unit)}</td>
              <td className="figure">
                {before === null || after === null ? words.notKnown : show(after - before, unit)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
