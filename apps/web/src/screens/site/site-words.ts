import type { SiteEntry, SiteItem } from '@coveline/project';
import { m } from '../../messages/index.ts';
import { show, showWhole } from '../../numbers/show.ts';

type Point = readonly [number, number, number];

const at = (p: Point) => `(${p.map((x) => String(Math.round(x))).join(', ')}) mm`;
const way = (p: Point) => `(${p.map((x) => show(x, '1', 2)).join(', ')})`;

/** Its part or side as people know it. */
export function siteName({ id, item, standing }: SiteEntry): string {
  if (standing === 'added') return `${m.site.one[item.what]}, ${m.site.addedName}`;
  return id.slice(Math.max(id.lastIndexOf('/'), id.indexOf(':')) + 1);
}

/** Its numbers in one line. */
export function siteNumbers(item: SiteItem): string {
  const f = m.site.fields;
  const parts = 'parts' in item ? [...item.parts.map((id) => id.slice(id.lastIndexOf('/') + 1))] : [];
  const named = parts.length > 4 ? [...parts.slice(0, 4), '…'] : parts;
  return [...numbers(), ...(item.what === 'main' ? named : [])].join(' · ');

  function numbers(): string[] {
    switch (item.what) {
      case 'floor':
        return [`${f.height_mm} ${showWhole(item.height_mm)}`];
      case 'wall':
        return [`${f.at_mm} ${at(item.at_mm)}`, `${f.into} ${way(item.into)}`];
      case 'access':
        return [`${f.outward} ${way(item.outward)}`];
      case 'door':
        return [`${f.hinge_at} ${at(item.hinge.at_mm)}`, `${f.hinge_axis} ${way(item.hinge.axis)}`];
      case 'mouth':
        return [`${f.at_mm} ${at(item.at_mm)}`, `${f.radius_mm} ${show(item.radius_mm, 'mm')}`];
      case 'filter': {
        const side = (v: Point) => show(2 * Math.hypot(...v), 'mm', 4);
        return [
          `${side(item.across_mm)} × ${side(item.along_mm)}`,
          `${f.at_mm} ${at(item.at_mm)}`,
          `${f.flow} ${way(item.flow)}`,
          ...(item.velocity_mPerS === undefined
            ? []
            : [`${f.velocity_mPerS} ${show(item.velocity_mPerS, 'm/s')}`]),
        ];
      }
      case 'nozzle':
        return [
          `${f.at_mm} ${at(item.at_mm)}`,
          `${f.cone_deg} ${show(item.cone_deg, 'deg')}`,
          `${f.range_mm} ${show(item.range_mm, 'mm', 4)}`,
        ];
      case 'drain':
        return [`${f.at_mm} ${at(item.at_mm)}`, `${f.diameter_mm} ${show(item.diameter_mm, 'mm')}`];
      case 'main':
        return [];
    }
  }
}
