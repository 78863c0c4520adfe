/** What a point of the surface is to the nozzles. */
import type { SurfaceDivision } from '../patchwork/divide-part.ts';
import type { Leaves } from '../patchwork/leaves.ts';
import type { Pieces } from '../patchwork/pieces.ts';
import { coverOn } from '../patchwork/uncovered.ts';
import type { Sealed } from '../sealed.ts';
import type { Material } from '../tree/inside.ts';
import type { NozzleSet } from './nozzle-set.ts';
import { aimAt, isBlocked, sights } from './sight.ts';
import type { Tally } from './tally.ts';

/** Not counted: covered, or in air without a nozzle. */
export const uncounted = 0;
/** Not counted: beyond the range of all. */
export const beyond = 1;
export const seen = 2;
/** A nozzle is aimed at it, and something stands between. */
export const shaded = 3;
/** It faces nozzles within range, and lies beside the cones of all of them. */
export const aside = 4;
/** It faces away from every nozzle within range. */
export const turned = 5;

export interface Asked {
  readonly material: Material;
  readonly boxes: Float64Array;
  readonly set: NozzleSet;
  readonly cutOff: Sealed;
  readonly contact_mm: number;
  readonly pieces: Pieces;
  readonly tally: Tally;
  /** See `Division` and `SurfaceDivision`. */
  readonly size_mm: number;
  readonly looks: number;
  /** Called before every look at a point, to keep a long run stoppable. */
  readonly pulse: () => void;
}

export function questionOn(part: number, asked: Asked): SurfaceDivision {
  const { material, boxes, set, cutOff, contact_mm, pieces, tally, pulse } = asked;
  const { tree } = material;
  const { corners, slotOf } = tree;
  const start = tree.start[part];
  const count = set.nozzles.length;
  const lift = contact_mm * 1.25;
  const covered = coverOn(material, boxes, part, contact_mm);
  const normal = new Float64Array(3);
  /** Per nozzle: 1 when the triangle faces it, and it is not one of its own. */
  const faces = new Uint8Array(count);
  /** Per nozzle: 1 when it sees the point that `middle` asked or `recall` named last. */
  const sees = new Uint8Array(count);
  /** Per leaf: a bit for every nozzle that sees it. */
  const bytes = Math.ceil(count / 8);
  let seenBy = new Uint8Array();

  const begin = (t: number) => {
    const c = slotOf[start + t] * 9;
    setNormal(corners, c, normal);
    for (let i = 0; i < count; i++) {
      const a = i * 3;
      const before =
        (set.at[a] - corners[c]) * normal[0] +
        (set.at[a + 1] - corners[c + 1]) * normal[1] +
        (set.at[a + 2] - corners[c + 2]) * normal[2];
      faces[i] = before > 0 && !set.own[i].has(part) ? 1 : 0;
    }
  };
  const isWithin = (x: number, y: number, z: number): boolean => {
    for (let i = 0; i < count; i++) if (aimAt(set, i, x, y, z) !== 'beyond') return true;
    return false;
  };
  const look = (x: number, y: number, z: number, all: boolean): number => {
    pulse();
    if (all) sees.fill(0);
    if (!isWithin(x, y, z)) return beyond;
    const [nx, ny, nz] = normal;
    if (covered(x, y, z, nx, ny, nz)) return uncounted;
    let found: number = turned;
    for (let i = 0; i < count; i++) {
      if (faces[i] === 0) continue;
      const aim = aimAt(set, i, x, y, z);
      if (aim === 'beside' && found === turned) found = aside;
      if (aim !== 'hit') continue;
      if (isBlocked(tree, set, i, x + nx * lift, y + ny * lift, z + nz * lift)) {
        if (found !== seen) found = shaded;
        continue;
      }
      if (!all) return seen;
      found = seen;
      sees[i] = 1;
    }
    return found !== seen && cutOff(x, y, z, nx, ny, nz) ? uncounted : found;
  };
  const ask = (leaves: Leaves): Uint8Array => {
    const n = leaves.count;
    const kinds = new Uint8Array(n).fill(turned);
    const at = leaves.points;
    const normals = new Float64Array(n * 3);
    seenBy = new Uint8Array(n * bytes);
    for (let l = 0, last = -1; l < n; l++) {
      pulse();
      if (leaves.triangle[l] !== last) {
        last = leaves.triangle[l];
        setNormal(corners, slotOf[start + last] * 9, normal);
      }
      const [nx, ny, nz] = normal;
      const [x, y, z] = [at[l * 3], at[l * 3 + 1], at[l * 3 + 2]];
      normals.set(normal, l * 3);
      if (!isWithin(x, y, z)) kinds[l] = beyond;
      else if (covered(x, y, z, nx, ny, nz)) kinds[l] = uncounted;
    }
    for (let i = 0; i < count; i++) {
      if (set.own[i].has(part)) continue;
      sights(tree, set, i, { at, normals, lift }, (l) => kinds[l] > beyond, {
        beside: (l) => {
          if (kinds[l] === turned) kinds[l] = aside;
        },
        blocked: (l) => {
          pulse();
          if (kinds[l] !== seen) kinds[l] = shaded;
        },
        seen: (l) => {
          pulse();
          kinds[l] = seen;
          seenBy[l * bytes + (i >> 3)] |= 1 << (i & 7);
        },
      });
    }
    for (let l = 0; l < n; l++) {
      if (kinds[l] < shaded) continue;
      pulse();
      const k = l * 3;
      if (cutOff(at[k], at[k + 1], at[k + 2], normals[k], normals[k + 1], normals[k + 2]))
        kinds[l] = uncounted;
    }
    return kinds;
  };

  return {
    pieces,
    gatherFrom: shaded,
    size_mm: asked.size_mm,
    looks: asked.looks,
    isAsked: () => true,
    ask,
    kind: (x, y, z) => look(x, y, z, false),
    middle: (x, y, z) => look(x, y, z, true),
    begin,
    recall: (l) => {
      for (let i = 0; i < count; i++) sees[i] = (seenBy[l * bytes + (i >> 3)] >> (i & 7)) & 1;
    },
    take: (kind, area, x, y, z) => {
      if (kind === seen) tally.addSeen(area, x, y, z, normal, sees);
      else if (kind === beyond) tally.addBeyond(area);
      else if (kind !== uncounted) tally.addUnseen(area);
    },
    end: (t) => tally.endTriangle(start + t),
  };
}

/** Unit normal of the triangle whose nine coordinates begin at `i`. */
export function setNormal(c: ArrayLike<number>, i: number, out: Float64Array): void {
  const ux = c[i + 3] - c[i];
  const uy = c[i + 4] - c[i + 1];
  const uz = c[i + 5] - c[i + 2];
  const vx = c[i + 6] - c[i];
  const vy = c[i + 7] - c[i + 1];
  const vz = c[i + 8] - c[i + 2];
  const nx = uy * vz - uz * vy;
  const ny = uz * vx - ux * vz;
  const nz = ux * vy - uy * vx;
  const length = Math.sqrt(nx * nx + ny * ny + nz * nz) || 1;
  out[0] = nx / length;
  out[1] = ny / length;
  out[2] = nz / length;
}
