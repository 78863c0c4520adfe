import type { Coverage } from '@coveline/review';
import { m } from '../../messages/index.ts';

const order = ['computed', 'looked', 'notLookedAt', 'noSuchElement'] as const;

/** What was computed, looked at, and not looked at. */
export function CoverageTable({ coverage }: { readonly coverage: Coverage }) {
  const words = m.coverage;
  const all = order.reduce((sum, key) => sum + coverage[key], 0);
  return (
    <table className="sheet-table coverage">
      <caption>{words.title}</caption>
      <thead>
        <tr>
          <th scope="col">{words.what}</th>
          <th scope="col">{words.count}</th>
          <td />
        </tr>
      </thead>
      <tbody>
        {order.map((key) => (
          <tr key={key}>
            <th scope="row">{words.rows[key]}</th>
            <td className="figure">{coverage[key]}</td>
            <td aria-hidden="true">
              <span
                className={`coverage-bar coverage-${key}`}
                style={{ inlineSize: `${(100 * coverage[key]) / Math.max(1, all)}%` }}
              />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
