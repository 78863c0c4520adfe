import type { Working, WorkingValue } from '@coveline/quantity';
import { m } from '../../../messages/index.ts';
import { show } from '../../../numbers/show.ts';
import './working.css';

/** How a number came about, so that a reader can redo it by hand. */
export function WorkingView({ working }: { readonly working: Working }) {
  return (
    <>
      <h3>{working.title}</h3>
      {working.formula.length > 0 ? (
        <>
          <h4>{m.slip.formula}</h4>
          {working.formula.map((line) => (
            <p key={line} className="formula">
              {line}
            </p>
          ))}
        </>
      ) : null}
      <WorkingValues title={m.slip.inputs} values={working.inputs} />
      <WorkingValues title={m.slip.steps} values={[...working.steps, working.result]} />
      <p className="working-source">
        <b>{m.slip.source}</b> {working.source}
        <br />
        <b>{m.slip.validity}</b> {working.validity}
      </p>
      {working.warnings.map((warning) => (
        <p key={warning} className="working-warning">
          {warning}
        </p>
      ))}
    </>
  );
}

interface ValuesProps {
  readonly title: string;
  readonly values: readonly WorkingValue[];
}

/** Values with their symbols, where they come from, and what they stand for. */
export function WorkingValues({ title, values }: ValuesProps) {
  if (values.length === 0) return null;
  return (
    <table className="values">
      <caption>{title}</caption>
      <tbody>
        {values.map((v) => (
          <tr key={`${v.symbol} ${v.name}`}>
            <th scope="row">
              <i>{v.symbol}</i> {v.name}
              {v.text ? <small>{v.text}</small> : null}
              {v.from ? <small>{v.from}</small> : null}
            </th>
            <td>{show(v.value, v.unit, 4)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
