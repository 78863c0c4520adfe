import type { Finding } from '@coveline/review';
import { m } from '../../../messages/index.ts';
import { Link } from '../../../routing/link.tsx';
import { useSources } from '../../../state/queries.ts';
import { useMachineData } from '../../machine/machine-context.ts';

interface Props {
  readonly demand: Finding['demand'];
  /** Id of the requirement. */
  readonly requirement: string;
}

/** What is demanded, by whom, how binding it is, and how far its source was seen. */
export function Demand({ demand, requirement }: Props) {
  const { machine, route } = useMachineData();
  const sources = useSources(machine.id).data ?? [];
  return (
    <>
      <h2>{m.slip.demand}</h2>
      <div className="demand">
        <p>{demand.text}</p>
        {demand.limit ? <p className="figure">{m.slip.limit(demand.limit)}</p> : null}
        <ul className="plain">
          {demand.citations.map((c) => {
            const source = sources.find((s) => s.key === c.source);
            return (
              <li key={`${c.source} ${c.clause}`}>
                {source ? `${source.title} (${source.edition})` : c.source}
                {c.clause ? `, ${c.clause}` : ''} · {m.demandKinds[source?.kind ?? demand.kind]}
                {m.standings[c.standing] ? ` · ${m.standings[c.standing]}` : ''}
              </li>
            );
          })}
          {demand.citations.length === 0 ? <li>{m.demandKinds[demand.kind]}</li> : null}
        </ul>
        <p>
          <Link to={{ ...route, page: 'requirements', item: requirement }}>{m.slip.followDemand}</Link>
        </p>
      </div>
    </>
  );
}
