/** Undersides that stand low over the floor. */
import type { Model } from '@coveline/model';
import { dividePart, type SurfaceDivision } from '../patchwork/divide-part.ts';
import { patchesOf } from '../patchwork/patches.ts';
import { Pieces } from '../patchwork/pieces.ts';
import type { Control, SurveySettings } from '../result.ts';
import { step } from '../stopped.ts';
import { partBoxes } from '../tree/boxes.ts';
import { newHit, newRay, someAlong } from '../tree/ray.ts';
import type { Tree } from '../tree/tree.ts';

/** A connected underside of one part. */
export interface Underside {
  readonly part: number;
  /** Height of its lowest point over the floor. */
  readonly distance_mm: number;
  /** Area of the floor below it. */
  readonly over_mm2: number;
  readonly lowest: readonly [number, number, number];
  readonly bounds_mm: ReturnType<typeof patchesOf>['patches'][number]['bounds_mm'];
  readonly triangles: Float32Array;
}

/** What stands this close to the floor stands on it. */
const standing_mm = 2;
/** Faces steeper than this, by the cosine of their slope, are walls: 88 degrees. */
const steepest = Math.cos((88 * Math.PI) / 180);
/** Longest edge of the triangles that are asked as a whole, mm. */
const size_mm = 20;
const low = 1;

/**
 * Undersides lower than the limit, and open to the floor straight below them, least distance first. Writes the
 * height of each such triangle into `field`.
 */
export function lowUndersides(
  model: Model,
  tree: Tree,
  floor_mm: number,
  { floorBelow_mm, leastUnderside_cm2, contact_mm }: SurveySettings,
  control: Control,
  field: Float32Array,
): readonly Underside[] {
  const pieces = new Pieces();
  const boxes = partBoxes(tree);
  const ray = newRay();
  const hit = newHit();
  const firstPiece: number[] = [];
  let part = 0;
  let looks = 0;
  let lowHere = 0;
  let areaHere = 0;
  const kind = (x: number, y: number, z: number): number => {
    if (++looks % 4096 === 0) step(control, 'clearances', part / model.parts.length);
    const height = z - floor_mm;
    if (height <= standing_mm || height >= floorBelow_mm) return 0;
    ray.ox = x;
    ray.oy = y;
    ray.oz = z;
    ray.dz = -1;
    // The face itself does not count; what lies against it from below still has its far side in the way.
    ray.tMin = contact_mm / 2;
    ray.tMax = height + standing_mm;
    return someAlong(tree, ray, hit) ? 0 : low;
  };
  const division = (p: number): SurfaceDivision => ({
    pieces,
    gatherFrom: low,
    size_mm,
    kind,
    middle: kind,
    looks: Infinity,
    isAsked: (t) => {
      const c = tree.slotOf[tree.start[p] + t] * 9;
      const lowest = Math.min(tree.corners[c + 2], tree.corners[c + 5], tree.corners[c + 8]);
      return lowest - floor_mm < floorBelow_mm && slopeOf(tree.corners, c) <= -steepest;
    },
    take: (k, area) => {
      areaHere += area;
      if (k === low) lowHere += area;
    },
    end: (t) => {
      const c = tree.slotOf[tree.start[p] + t] * 9;
      if (lowHere >= areaHere / 2) {
        const z = (tree.corners[c + 2] + tree.corners[c + 5] + tree.corners[c + 8]) / 3;
        field[tree.start[p] + t] = z - floor_mm;
      }
      lowHere = 0;
      areaHere = 0;
    },
    begin: () => {},
    recall: () => {},
    ask: ({ count, points }) => {
      const kinds = new Uint8Array(count);
      for (let l = 0; l < count; l++) {
        kinds[l] = kind(points[l * 3], points[l * 3 + 1], points[l * 3 + 2]);
      }
      return kinds;
    },
  });
  for (part = 0; part < model.parts.length; part++) {
    step(control, 'clearances', part / model.parts.length);
    firstPiece.push(pieces.count);
    if (boxes[part * 6 + 2] - floor_mm < floorBelow_mm) dividePart(model, tree, part, division(part));
  }
  return patchesOf(pieces, 0)
    .patches.map(({ root, triangles, bounds_mm }): Underside => {
      const { over_mm2, lowest } = flattened(triangles);
      const distance_mm = bounds_mm[0][2] - floor_mm;
      const of = firstPiece.findLastIndex((first) => first <= root);
      return { part: of, distance_mm, over_mm2, lowest, bounds_mm, triangles };
    })
    .filter(({ over_mm2 }) => over_mm2 >= leastUnderside_cm2 * 100)
    .sort((a, b) => a.distance_mm - b.distance_mm || a.part - b.part || b.over_mm2 - a.over_mm2);
}

/** z of the unit normal. */
function slopeOf(c: Float64Array, i: number): number {
  const ux = c[i + 3] - c[i];
  const uy = c[i + 4] - c[i + 1];
  const uz = c[i + 5] - c[i + 2];
  const vx = c[i + 6] - c[i];
  const vy = c[i + 7] - c[i + 1];
  const vz = c[i + 8] - c[i + 2];
  const nx = uy * vz - uz * vy;
  const ny = uz * vx - ux * vz;
  const nz = ux * vy - uy * vx;
  return nz / (Math.sqrt(nx * nx + ny * ny + nz * nz) || 1);
}

/** Area as seen from below, and the lowest point. */
function flattened(t: Float32Array) {
  let over_mm2 = 0;
  let at = 2;
  for (let i = 0; i < t.length; i += 9) {
    over_mm2 +=
      Math.abs((t[i + 3] - t[i]) * (t[i + 7] - t[i + 1]) - (t[i + 4] - t[i + 1]) * (t[i + 6] - t[i])) / 2;
    for (let k = 2; k < 9; k += 3) if (t[i + k] < t[at]) at = i + k;
  }
  return { over_mm2, lowest: [t[at - 2], t[at - 1], t[at]] as const };
}
