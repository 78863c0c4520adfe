import type { CalculationEntry, Outcome } from '@coveline/engineering';
import { formatUnit } from '@coveline/quantity';
import { m } from '../../messages/index.ts';
import { WorkingValues } from '../walk/slip/working-view.tsx';
import { ResultTable } from './result-table.tsx';

interface Props {
  readonly entry: CalculationEntry;
  readonly outcome: Outcome | null;
}

/** All that stands behind a result: other values, tables, formula, range, source, caution. */
export function Reasons({ entry, outcome }: Props) {
  const done = outcome?.kind === 'done' ? outcome : null;
  const c = m.calculations;
  // Some calculations give their caution as a warning, which stands with the result already.
  const said = entry.caution === undefined || done?.warnings.includes(entry.caution);
  return (
    <>
      {said ? null : (
        <p className="calc-caution">
          <b>{c.caution}</b> {entry.caution}
        </p>
      )}
      {done ? <WorkingValues title={c.alsoFound} values={done.working.steps} /> : null}
      {done?.tables.map((table) => (
        <ResultTable key={table.title} table={table} />
      ))}
      <h2>{c.formula}</h2>
      {(done?.working.formula ?? entry.equation).map((line) => (
        <p key={line} className="formula">
          {line}
        </p>
      ))}
      {done ? (
        <WorkingValues title={c.usedInputs} values={done.working.inputs} />
      ) : (
        <>
          <h2>{c.gives}</h2>
          <ul className="calc-gives">
            {Object.entries(entry.outputs).map(([key, { label, unit }]) => (
              <li key={key}>{unit === '1' ? label : `${label}, ${formatUnit(unit)}`}</li>
            ))}
          </ul>
        </>
      )}
      <h2>{c.validity}</h2>
      <p>{entry.validity}</p>
      <h2>{c.source}</h2>
      <p>{entry.source}</p>
    </>
  );
}
