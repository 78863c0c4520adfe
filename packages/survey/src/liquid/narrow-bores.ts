import { type Model, transformPoint, type Vec3 } from '@coveline/model';
import { boresOf } from '../hollows/bores.ts';
import type { Grid } from './grid.ts';
import type { NarrowBore } from './refine.ts';
import type { Soup } from './soup.ts';

/** Bores up to this many pitches across may slip between the columns. */
const safeAcross = 1.5;
/** Bores of one survey that are looked at; machines with more have perforated sheets, where one speaks for many. */
const mostBores = 3000;

/** Both ends of the bores, known from CAD faces, that are too narrow for the grid. */
export function narrowBores(model: Model, { turn: [cos, sin] }: Soup, { pitch }: Grid): NarrowBore[] {
  const ofShape = model.shapes.map((shape) =>
    boresOf(shape).filter(
      ({ radiusFrom, radiusTo }) => 2 * Math.min(radiusFrom, radiusTo) < safeAcross * pitch,
    ),
  );
  const found: NarrowBore[] = [];
  for (const { shape, placement } of model.parts) {
    for (const { origin, direction, from, to, radiusFrom, radiusTo } of ofShape[shape]) {
      for (const s of [from, to]) {
        const local = origin.map((o, k) => o + s * direction[k]) as unknown as Vec3;
        const [x, y] = transformPoint(placement, local);
        found.push({ at: [cos * x + sin * y, cos * y - sin * x], radius_mm: Math.min(radiusFrom, radiusTo) });
      }
    }
  }
  return found.slice(0, mostBores);
}
