import type { Overhang, SkyView } from '@coveline/survey';
import { m } from '../../messages/index.ts';
import { show } from '../../numbers/show.ts';
import { useMachineData } from '../machine/machine-context.ts';

interface Props {
  readonly mouths: readonly string[];
  readonly sky: readonly SkyView[];
  readonly above: readonly Overhang[];
}

/** One row an open container. */
export function MouthTable({ mouths, sky, above }: Props) {
  const { columns } = m.air;
  return (
    <table className="sheet-table">
      <caption className="unseen">{m.air.title}</caption>
      <thead>
        <tr>
          <th scope="col">{columns.mouth}</th>
          <th scope="col">{columns.open}</th>
          <th scope="col">{columns.interrupted}</th>
          <th scope="col">{columns.distance}</th>
          <th scope="col">{columns.above}</th>
          <th scope="col">{columns.more}</th>
        </tr>
      </thead>
      <tbody>
        {mouths.map((mouth) => (
          <MouthRow
            key={mouth}
            mouth={mouth}
            sky={sky.find((s) => s.mouth === mouth)}
            above={above.filter((o) => o.mouth === mouth)}
          />
        ))}
      </tbody>
    </table>
  );
}

const percent = (share: number) => show(100 * share, '%', 3);

interface RowProps {
  readonly mouth: string;
  readonly sky: SkyView | undefined;
  readonly above: readonly Overhang[];
}

function MouthRow({ mouth, sky, above }: RowProps) {
  const { model } = useMachineData();
  const words = m.air;
  const nameOf = (id: string) =>
    model?.parts.find((p) => p.id === id)?.name ?? id.slice(id.lastIndexOf('/') + 1);
  const ids = sky?.parts ?? above[0]?.mouthParts ?? [];
  const name = nameOf(ids[0] ?? mouth);
  const radius_mm = sky ? (sky.bounds_mm[1][0] - sky.bounds_mm[0][0]) / 2 : null;
  const opening = radius_mm === null ? '' : `?opening=${((Math.PI * radius_mm ** 2) / 100).toFixed(1)}+cm2`;
  const height = sky?.distance_mm === undefined ? '' : `?height=${sky.distance_mm.toFixed(0)}+mm`;
  return (
    <tr>
      <th scope="row">{name}</th>
      <td className="figure">{sky ? percent(sky.open) : ''}</td>
      <td>
        {sky && sky.interruptedBy.length === 0 ? words.nothing : null}
        <ul className="plain">
          {sky?.interruptedBy.map((i) => (
            <li key={i.part}>{words.share(nameOf(i.part), percent(i.share))}</li>
          ))}
        </ul>
        {sky?.caveats?.map((c) => (
          <div key={c} className="soft">
            {c}
          </div>
        ))}
      </td>
      <td className="figure">
        {sky?.distance_mm === undefined ? '' : show(sky.distance_mm, 'mm')}
        {sky?.transit_s === undefined ? null : (
          <div className="soft">{words.transit(show(sky.transit_s, 's'))}</div>
        )}
      </td>
      <td>
        {above.length === 0 ? words.nothing : null}
        <ul className="plain">
          {above.map((o) => (
            <li key={o.id}>{words.hangs(nameOf(o.parts[0]), percent(o.covers), show(o.height_mm, 'mm'))}</li>
          ))}
        </ul>
      </td>
      <td>
        <a
          href={`/calculations/container-contamination${opening}`}
          aria-label={words.contaminationNamed(name)}
        >
          {words.contamination}
        </a>
        <br />
        <a href={`/calculations/first-air${height}`} aria-label={words.driftNamed(name)}>
          {words.drift}
        </a>
      </td>
    </tr>
  );
}
