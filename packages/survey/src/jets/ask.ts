/** What a point of the surface is to the nozzles, asked point by point. */
import type { SurfaceDivision } from '../patchwork/divide-part.ts';
import type { Pieces } from '../patchwork/pieces.ts';
import { coverOn } from '../patchwork/uncovered.ts';
import type { Sealed } from '../sealed.ts';
import type { Material } from '../tree/inside.ts';
import type { NozzleSet } from './nozzle-set.ts';
import { aimAt, blockerOf, isBlocked } from './sight.ts';
import type { Tally } from './tally.ts';

/** Not counted: covered, in air without a nozzle, or beyond the range of all. */
export const uncounted = 0;
export const seen = 1;
/** A nozzle is aimed at it, and something stands between. */
export const shaded = 2;
/** It faces nozzles within range, and lies beside the cones of all of them. */
export const aside = 3;
/** It faces away from every nozzle within range. */
export const turned = 4;

/** What shades is asked once for this much surface, as a share of the size squared. */
const naming = 1 / 16;

export interface Asked {
  readonly material: Material;
  readonly boxes: Float64Array;
  readonly set: NozzleSet;
  readonly cutOff: Sealed;
  readonly contact_mm: number;
  readonly pieces: Pieces;
  readonly tally: Tally;
  /** See `Division`. */
  readonly size_mm: number;
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
  /** Per nozzle: 1 when it sees the point that `middle` asked last. */
  const sees = new Uint8Array(count);
  const bytes = Math.ceil(count / 8);
  const kept = new Uint8Array((tree.start[part + 1] - start) * bytes);
  const worthNaming = naming * asked.size_mm ** 2;
  /** Shaded surface since what shades it was asked last, mm2. */
  let unnamed = 0;
  let last = 0;
  let isBeyond = false;

  const unseen = (x: number, y: number, z: number, blocked: boolean, beside: boolean): number => {
    let within = blocked || beside;
    for (let i = 0; i < count && !within; i++) within = aimAt(set, i, x, y, z) !== 'beyond';
    isBeyond = !within;
    if (!within) return uncounted;
    const [nx, ny, nz] = normal;
    if (covered(x, y, z, nx, ny, nz) || cutOff(x, y, z, nx, ny, nz)) return uncounted;
    return blocked ? shaded : beside ? aside : turned;
  };
  const look = (x: number, y: number, z: number, all: boolean): number => {
    pulse();
    isBeyond = false;
    const px = x + normal[0] * lift;
    const py = y + normal[1] * lift;
    const pz = z + normal[2] * lift;
    let blocked = false;
    let beside = false;
    let any = false;
    // The one that saw the point before is likely to see this one.
    const first = last;
    for (let k = 0; k < count; k++) {
      const i = (first + k) % count;
      if (all) sees[i] = 0;
      if (faces[i] === 0) continue;
      const aim = aimAt(set, i, x, y, z);
      if (aim === 'beside') beside = true;
      if (aim !== 'hit') continue;
      if (isBlocked(tree, set, i, px, py, pz)) {
        blocked = true;
        continue;
      }
      if (!any) last = i;
      any = true;
      if (!all) return seen;
      sees[i] = 1;
    }
    return any ? seen : unseen(x, y, z, blocked, beside);
  };

  return {
    pieces,
    gatherFrom: shaded,
    size_mm: asked.size_mm,
    kind: (x, y, z) => look(x, y, z, false),
    middle: (x, y, z) => look(x, y, z, true),
    begin: (t) => {
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
      return true;
    },
    take: (kind, area, x, y, z, piece) => {
      if (kind === seen) tally.addSeen(area, x, y, z, normal, sees);
      else if (kind === uncounted) tally.addUncounted(area, isBeyond);
      else {
        tally.addUnseen(area);
        if (kind === turned) tally.shade(piece, part, area);
        if (kind !== shaded) return;
        unnamed += area;
        if (unnamed < worthNaming) return;
        const weight = unnamed;
        unnamed = 0;
        for (let i = 0; i < count; i++) {
          if (faces[i] === 0 || aimAt(set, i, x, y, z) !== 'hit') continue;
          const [px, py, pz] = [x + normal[0] * lift, y + normal[1] * lift, z + normal[2] * lift];
          const blocker = blockerOf(tree, set, i, px, py, pz);
          if (blocker) tally.shade(piece, blocker.part, weight);
        }
      }
    },
    end: (t) => tally.endTriangle(start + t),
    keep: (t) => {
      for (let i = 0; i < count; i++) if (sees[i] === 1) kept[t * bytes + (i >> 3)] |= 1 << (i & 7);
      if (isBeyond) tally.field[start + t] = beyondMark;
    },
    recall: (t) => {
      for (let i = 0; i < count; i++) sees[i] = (kept[t * bytes + (i >> 3)] >> (i & 7)) & 1;
      isBeyond = tally.field[start + t] === beyondMark;
    },
  };
}

/** Stands in the field until the triangle is taken. */
const beyondMark = -1;

function setNormal(c: Float64Array, i: number, out: Float64Array): void {
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
