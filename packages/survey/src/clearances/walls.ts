/** Distances to the upright walls beside the machine. */
import type { Model, Vec3 } from '@coveline/model';
import type { Site } from '../site.ts';
import { dot, minus, unit } from '../sky/vector.ts';
import type { Tree } from '../tree/tree.ts';

export interface WallDistance {
  readonly part: number;
  /** Of its nearest point; negative where it reaches through the wall. */
  readonly distance_mm: number;
  readonly at_mm: Vec3;
}

/** Each part's nearest point to a wall, nearest part first; parts without triangles are left out. */
export function wallDistances(
  model: Model,
  { corners, slotOf, start }: Tree,
  wall: Site['walls'][number],
): readonly WallDistance[] {
  const [x, y, z] = unit(wall.into);
  const zero = dot(wall.at_mm, [x, y, z]);
  const out: WallDistance[] = [];
  for (let p = 0; p < model.parts.length; p++) {
    let least = Infinity;
    let at = 0;
    for (let t = start[p]; t < start[p + 1]; t++) {
      const c = slotOf[t] * 9;
      for (let k = c; k < c + 9; k += 3) {
        const d = corners[k] * x + corners[k + 1] * y + corners[k + 2] * z;
        if (d >= least) continue;
        least = d;
        at = k;
      }
    }
    if (least === Infinity) continue;
    out.push({
      part: p,
      distance_mm: least - zero,
      at_mm: [corners[at], corners[at + 1], corners[at + 2]],
    });
  }
  return out.sort((a, b) => a.distance_mm - b.distance_mm || a.part - b.part);
}

/** Why a wall cannot be used; null when it can. */
export function wallFault({ at_mm, into }: Site['walls'][number]): string | null {
  const finite = [...at_mm, ...into].every(Number.isFinite);
  if (!finite || !(Math.hypot(...into) > 0)) return 'its direction has no length';
  return Math.abs(unit(into)[2]) > leaning ? 'it does not stand upright' : null;
}

/** Height of a unit vector into the room from which on a wall leans: 5 degrees. */
const leaning = Math.sin((5 * Math.PI) / 180);

/** Moves a point straight to the wall. */
export function onWall(wall: Site['walls'][number], p: Vec3): Vec3 {
  const n = unit(wall.into);
  const d = dot(minus(p, wall.at_mm), n);
  return [p[0] - n[0] * d, p[1] - n[1] * d, p[2] - n[2] * d];
}
