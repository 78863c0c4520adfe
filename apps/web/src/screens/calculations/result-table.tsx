import type { Table } from '@coveline/engineering';
import { formatUnit } from '@coveline/quantity';
import { useId } from 'react';
import { m } from '../../messages/index.ts';
import { show } from '../../numbers/show.ts';
import { Chart } from './chart.tsx';
import { chartOf } from './chart-of.ts';

/** More rows are found in the text that can be copied. */
const mostRows = 500;

/** The rows of a result, and a chart of them where they are points. */
export function ResultTable({ table }: { readonly table: Table }) {
  const title = useId();
  const { columns, rows } = table;
  const chart = chartOf(table);
  return (
    <>
      <h2 id={title}>{table.title}</h2>
      {chart ? <Chart chart={chart} /> : null}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by key (WCAG 2.1.1) */}
      <section className="calc-rows" aria-labelledby={title} tabIndex={0}>
        <table className="sheet-table" aria-labelledby={title}>
          <thead>
            <tr>
              {columns.map(({ name, unit }, i) => (
                <th key={name} scope="col" className={typeof rows[0]?.[i] === 'number' ? 'number' : ''}>
                  {unit === '1' || unit === '' ? name : `${name}, ${formatUnit(unit)}`}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.slice(0, mostRows).map((row, r) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: rows have no name of their own and never move
              <tr key={r}>
                {row.map((value, i) => (
                  <td key={columns[i].name} className={typeof value === 'number' ? 'number' : ''}>
                    {typeof value === 'number' ? show(value, '1', 4) : value}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      {rows.length > mostRows ? (
        <p className="soft">{m.calculations.moreRows(rows.length - mostRows)}</p>
      ) : null}
    </>
  );
}
