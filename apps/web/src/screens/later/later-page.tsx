import { m } from '../../messages/index.ts';

/** A stop of the path that is not built yet says so. */
export function LaterPage({ stop }: { readonly stop: 'air' }) {
  return (
    <div className="page">
      <h1>{m.stops[stop]}</h1>
      <p>
        <strong>{m.later.title}.</strong> {m.later[stop]}
      </p>
      <p>{m.later.leftOut}</p>
    </div>
  );
}
