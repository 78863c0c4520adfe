import type { Finding } from '@coveline/review';
import { m } from '../../../messages/index.ts';
import { useSources } from '../../../state/queries.ts';

/** What is demanded, by whom, how binding it is, and how far its source was seen. */
export function Demand({ demand }: { readonly demand: Finding['demand'] }) {
  const sources = useSources().data ?? [];
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
      </div>
    </>
  );
}
