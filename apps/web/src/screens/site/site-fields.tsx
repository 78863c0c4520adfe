import { type SiteItem, siteItem } from '@coveline/project';
import { m } from '../../messages/index.ts';
import { QuantityField } from '../../numbers/quantity-field.tsx';
import { announce } from '../../state/announce.ts';
import { PartsField } from './parts-field.tsx';
import { type Point, PointField } from './point-field.tsx';

interface Props {
  readonly item: SiteItem;
  readonly onChange: (item: SiteItem) => void;
}

const places = ['at_mm'] as const;
const ways = ['into', 'outward', 'flow', 'across_mm', 'along_mm', 'direction'] as const;
const far = 1e6;
const numbers = [
  ['height_mm', 'mm', -far, far, false],
  ['radius_mm', 'mm', 0.1, far, false],
  ['diameter_mm', 'mm', 0.1, far, false],
  ['cone_deg', 'deg', 0.1, 360, false],
  ['range_mm', 'mm', 0.1, far, false],
  ['time_s', 's', 0, far, true],
  ['velocity_mPerS', 'm/s', 0.001, 10, true],
] as const;
/** Numbers that need not be known, and where they belong. */
const mayBeAbsent: Readonly<Record<string, SiteItem['what']>> = { time_s: 'mouth', velocity_mPerS: 'filter' };

/** All numbers and parts of one thing of the site, each kept when its field is left. */
export function SiteFields({ item, onChange }: Props) {
  const values = item as Readonly<Record<string, unknown>>;
  const set = (change: Readonly<Record<string, unknown>>) => {
    const next = siteItem.safeParse({ ...item, ...change });
    if (next.success) onChange(next.data);
    else announce(m.site.noDirection);
  };
  const f = m.site.fields;
  return (
    <div className="site-fields">
      {places.map((key) =>
        key in item ? (
          <PointField
            key={key}
            label={f[key]}
            unit="mm"
            value={values[key] as Point}
            onChange={(v) => set({ [key]: v })}
          />
        ) : null,
      )}
      {item.what === 'door' ? (
        <>
          <PointField
            label={f.hinge_at}
            unit="mm"
            value={item.hinge.at_mm}
            onChange={(at_mm) => set({ hinge: { ...item.hinge, at_mm } })}
          />
          <PointField
            label={f.hinge_axis}
            unit="1"
            value={item.hinge.axis}
            onChange={(axis) => set({ hinge: { ...item.hinge, axis } })}
          />
        </>
      ) : null}
      {ways.map((key) =>
        key in item ? (
          <PointField
            key={key}
            label={f[key]}
            unit={key.endsWith('_mm') ? 'mm' : '1'}
            value={values[key] as Point}
            onChange={(v) => set({ [key]: v })}
          />
        ) : null,
      )}
      {numbers.map(([key, unit, low, high, optional]) =>
        key in item || mayBeAbsent[key] === item.what ? (
          <QuantityField
            key={key}
            label={f[key]}
            unit={unit}
            low={low}
            high={high}
            optional={optional}
            placeholder={optional ? m.site.optional : ''}
            value={(values[key] as number | undefined) ?? null}
            onChange={(v) => set({ [key]: v ?? undefined })}
          />
        ) : null,
      )}
      {'parts' in item ? <PartsField parts={item.parts} onChange={(parts) => set({ parts })} /> : null}
    </div>
  );
}
