import type { FindingChange } from '@coveline/review';
import { m } from '../../messages/index.ts';
import { show } from '../../numbers/show.ts';
import { Link } from '../../routing/link.tsx';
import { useMachineData } from '../machine/machine-context.ts';

interface Props {
  readonly kind: FindingChange['change'];
  readonly changes: readonly FindingChange[];
  readonly onCarry: (change: FindingChange) => void;
}

/** Findings of one kind of change, with the number that orders them before and now. */
export function ChangeTable({ kind, changes, onCarry }: Props) {
  const { columns, changes: names } = m.revisions;
  return (
    <section>
      <h2>{`${names[kind]} (${changes.length})`}</h2>
      {changes.length === 0 ? null : (
        <table className="sheet-table">
          <caption className="unseen">{names[kind]}</caption>
          <thead>
            <tr>
              <th scope="col">{columns.finding}</th>
              <th scope="col">{columns.before}</th>
              <th scope="col">{columns.after}</th>
              <th scope="col">{columns.decision}</th>
            </tr>
          </thead>
          <tbody>
            {changes.map((c) => (
              <Row key={(c.after ?? c.before)!.id} change={c} onCarry={onCarry} />
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

const weightOf = (f: FindingChange['before']) =>
  f ? `${f.consequence.weightLabel}: ${show(f.consequence.weight, '1')}` : m.revisions.notKnown;

function Row({ change, onCarry }: { readonly change: FindingChange } & Pick<Props, 'onCarry'>) {
  const { route, decisions } = useMachineData();
  const { before, after, carried } = change;
  const words = m.revisions;
  const title = (after ?? before)!.title;
  return (
    <tr>
      <th scope="row">
        {after ? <Link to={{ ...route, page: 'walk', item: after.id }}>{title}</Link> : title}
      </th>
      <td className="figure">{weightOf(before)}</td>
      <td className="figure">{weightOf(after)}</td>
      <td>
        {carried ? (
          <>
            {carried.stands
              ? words.stands(m.decision.says[carried.decision.kind], carried.because)
              : words.falls(m.decision.says[carried.decision.kind], carried.because)}{' '}
            {carried.stands && after && !(after.id in decisions) ? (
              <button
                type="button"
                className="quiet"
                aria-label={words.carryNamed(title)}
                onClick={() => onCarry(change)}
              >
                {words.carry}
              </button>
            ) : null}
          </>
        ) : (
          words.none
        )}
      </td>
    </tr>
  );
}
