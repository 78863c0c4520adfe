import { type Model, type Shape, transformPoint, type Vec3 } from '@coveline/model';
import { type Bore, boresOf } from '../hollows/bores.ts';
import type { Grid } from './grid.ts';
import type { NarrowBore } from './refine-bores.ts';
import type { Soup } from './soup.ts';

/** Bores up to this many pitches across may slip between the columns, or lean so that no way through them is seen. */
const safeAcross = 3;
/** Nearer to level than to upright, one is looked at up to this width: its lowest line, where it drains, runs between columns. */
const safeAcrossLevel = 6;
/** Bores of one survey that are looked at; machines with more have perforated sheets, where one speaks for many. */
const mostBores = 3000;

/** Cosine to the vertical under which a bore is nearer to level. */
const leaning = Math.SQRT1_2;

/** The bores, known from CAD faces, that are too narrow for the grid. */
export function narrowBores(model: Model, { turn: [cos, sin] }: Soup, { pitch }: Grid): NarrowBore[] {
  const ofShape = model.shapes.map((shape) =>
    knownBores(shape).filter((bore) => 2 * narrowest(bore) < safeAcrossLevel * pitch),
  );
  const found: NarrowBore[] = [];
  for (const { shape, placement } of model.parts) {
    for (const bore of ofShape[shape]) {
      const radius_mm = narrowest(bore);
      const end = (s: number): Vec3 =>
        transformPoint(placement, bore.origin.map((o, k) => o + s * bore.direction[k]) as unknown as Vec3);
      const from = end(bore.from);
      const to = end(bore.to);
      const level = Math.abs(to[2] - from[2]) < leaning * (bore.to - bore.from);
      if (2 * radius_mm >= (level ? safeAcrossLevel : safeAcross) * pitch) continue;
      const turned = ([x, y]: Vec3): readonly [number, number] => [cos * x + sin * y, cos * y - sin * x];
      found.push({ from: turned(from), to: turned(to), radius_mm });
    }
  }
  return found.slice(0, mostBores);
}

const known = new WeakMap<Shape, readonly Bore[]>();

/** The bores of a shape, found once however often it is flooded. */
function knownBores(shape: Shape): readonly Bore[] {
  const bores = known.get(shape) ?? boresOf(shape);
  known.set(shape, bores);
  return bores;
}

function narrowest({ radiusFrom, radiusTo }: Bore): number {
  return Math.min(radiusFrom, radiusTo);
}
