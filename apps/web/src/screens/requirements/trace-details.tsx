import type { TracedFinding, TraceRow } from '@coveline/review';
import type { ReactNode } from 'react';
import { m } from '../../messages/index.ts';
import { Link } from '../../routing/link.tsx';
import { useMachineData } from '../machine/machine-context.ts';

/** Where a requirement leads: findings with decision, control measures, cleaning and samples, and the round. */
export function TraceDetails({ row }: { readonly row: TraceRow }) {
  const { route, review } = useMachineData();
  const words = m.trace;
  const items = review?.round.stops.flatMap((s) => s.items) ?? [];
  if (row.findings.length + row.round.length === 0) return <p className="soft">{words.nothing}</p>;
  return (
    <>
      {row.findings.map((f) => (
        <FindingTrace key={f.id} found={f} />
      ))}
      {row.round.length > 0 ? (
        <dl className="trace">
          <Line name={words.round}>
            {row.round.map((r) => (
              <li key={r.id}>
                <Link to={{ ...route, page: 'round', item: r.id }}>
                  {items.find((i) => i.id === r.id)?.text ?? r.id}
                </Link>{' '}
                <span className="soft">{r.answered ? words.answered : words.open}</span>
              </li>
            ))}
          </Line>
        </dl>
      ) : null}
    </>
  );
}

function FindingTrace({ found }: { readonly found: TracedFinding }) {
  const { route, review, findings } = useMachineData();
  const words = m.trace;
  const finding = findings.find((f) => f.id === found.id);
  const points = review?.proof.points.filter((p) => found.points.includes(p.id)) ?? [];
  const groups = review?.cleaning.groups.filter((g) => found.groups.includes(g.group.id)) ?? [];
  return (
    <>
      <p className="trace-finding">
        <Link to={{ ...route, page: 'walk', item: found.id }}>{finding?.title ?? found.id}</Link>{' '}
        {found.places.length > 0 ? <span className="soft">{words.places(found.places.length)}</span> : null}
      </p>
      <dl className="trace">
        <dt>{words.decision}</dt>
        <dd>{found.decision ? m.decision.says[found.decision.kind] : words.undecided}</dd>
        {found.controls.length > 0 ? (
          <Line name={words.controls}>
            {found.controls.map((c) => (
              <li key={c.what}>{words.control(c.what, c.interval, c.owner)}</li>
            ))}
          </Line>
        ) : null}
        <Line name={words.cleaning}>
          {groups.map(({ group }) => (
            <li key={group.id}>
              <Link to={{ ...route, page: 'cleaning', item: null }}>{group.name}</Link>
            </li>
          ))}
        </Line>
        <Line name={words.points}>
          {points.map((p) => (
            <li key={p.id}>
              <Link to={{ ...route, page: 'proof', item: null }}>{p.name}</Link>
            </li>
          ))}
        </Line>
      </dl>
    </>
  );
}

function Line({ name, children }: { readonly name: string; readonly children: ReactNode[] }) {
  return (
    <>
      <dt>{name}</dt>
      <dd>
        {children.length === 0 ? (
          <span className="soft">{m.trace.none}</span>
        ) : (
          <ul className="plain">{children}</ul>
        )}
      </dd>
    </>
  );
}
