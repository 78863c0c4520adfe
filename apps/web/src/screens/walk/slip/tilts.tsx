import type { TiltedTotal, TiltRange } from '@coveline/survey';
import { m } from '../../../messages/index.ts';
import { show } from '../../../numbers/show.ts';

/** What stands on the whole machine when it is not level: a table of level, worst and best. */
export function Tilts({ tilts }: { readonly tilts: TiltRange }) {
  const words = m.slip.tilts;
  const rows: readonly (readonly [string, TiltedTotal])[] = [
    [words.level, tilts.level],
    [words.worst(show(tilts.range_deg, 'deg')), tilts.worst],
    [words.best(show(tilts.bestWithin_deg, 'deg')), tilts.best],
  ];
  return (
    <table className="sheet-table">
      <caption>{words.title}</caption>
      <tbody>
        {rows.map(([label, tilt]) => (
          <tr key={label}>
            <th scope="row">{label}</th>
            <td className="figure">{show(tilt.total_mL, 'mL')}</td>
            <td className="figure soft">{words.about(show(tilt.x_deg, 'deg'), show(tilt.y_deg, 'deg'))}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
