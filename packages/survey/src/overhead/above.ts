import type { Vec3 } from '@coveline/model';
import type { FilterFace } from '../site.ts';
import { landsOn } from '../sky/filter-face.ts';
import { firstAlong, newHit, newRay } from '../tree/ray.ts';
import type { Tree } from '../tree/tree.ts';

/** What a look straight up meets first. */
export interface Met {
  part: number;
  triangle: number;
  /** Above the point, mm. */
  height: number;
  /** The look began in the material of the part. */
  within: boolean;
}

export interface Above {
  readonly tree: Tree;
  /** Per part: 1 when its surface is closed. */
  readonly closed: Uint8Array;
  /** Parts of the mouth: a look passes them. */
  readonly own: ReadonlySet<number>;
  /** Filter faces end a look: what stands above them is on the unclean side and cannot fall through. */
  readonly filters: readonly FilterFace[];
  readonly filterParts: ReadonlySet<number>;
  readonly contact_mm: number;
}

const ray = newRay();
const hit = newHit();
const up: Vec3 = [0, 0, 1];

/** Writes what is met first; false for a clear sky or a filter. */
export function lookUp(above: Above, x: number, y: number, z: number, met: Met): boolean {
  const { tree, closed, own, filters, filterParts, contact_mm } = above;
  ray.ox = x;
  ray.oy = y;
  ray.oz = z;
  ray.dx = 0;
  ray.dy = 0;
  ray.dz = 1;
  // What lies on the rim counts.
  ray.tMin = -2 * contact_mm;
  ray.tMax = Infinity;
  for (const filter of filters) ray.tMax = Math.min(ray.tMax, landsOn(filter, [x, y, z], up) ?? Infinity);
  while (firstAlong(tree, ray, hit)) {
    if (filterParts.has(hit.part)) return false;
    if (own.has(hit.part)) {
      ray.tMin = hit.t + 1e-6;
      continue;
    }
    met.part = hit.part;
    met.triangle = hit.triangle;
    met.within = closed[hit.part] === 1 && facesUp(tree, hit.slot);
    met.height = met.within ? 0 : Math.max(0, hit.t);
    return true;
  }
  return false;
}

export function facesUp({ corners }: Tree, slot: number): boolean {
  const c = slot * 9;
  const ux = corners[c + 3] - corners[c];
  const uy = corners[c + 4] - corners[c + 1];
  const vx = corners[c + 6] - corners[c];
  const vy = corners[c + 7] - corners[c + 1];
  return ux * vy - uy * vx > 0;
}
