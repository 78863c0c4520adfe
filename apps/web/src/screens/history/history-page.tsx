import { m } from '../../messages/index.ts';
import { showTime } from '../../numbers/show.ts';
import { useHistory } from '../../state/queries.ts';
import { useMachineData } from '../machine/machine-context.ts';

/** Every change of the machine, newest first. */
export function HistoryPage() {
  const { machine } = useMachineData();
  const { data: entries, error } = useHistory(machine.id);
  return (
    <div className="page">
      <h1>{m.history.title}</h1>
      <p className="soft">{m.history.intro}</p>
      {error ? <p role="alert">{error.message}</p> : null}
      {entries && entries.length === 0 ? <p className="empty">{m.history.none}</p> : null}
      {entries && entries.length > 0 ? (
        <table className="sheet-table">
          <thead>
            <tr>
              <th scope="col">{m.history.columns.when}</th>
              <th scope="col">{m.history.columns.who}</th>
              <th scope="col">{m.history.columns.what}</th>
            </tr>
          </thead>
          <tbody>
            {entries.map((e) => (
              <tr key={e.seq}>
                <td className="figure">{showTime(e.at)}</td>
                <td>{e.by}</td>
                <td>
                  {m.history.kinds[e.kind]} {e.what}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      ) : null}
    </div>
  );
}
