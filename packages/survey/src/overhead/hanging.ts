import type { Vec3 } from '@coveline/model';
import type { Mouth } from '../site.ts';
import { circle, divideMouth, type Shares } from '../sky/disc.ts';
import { dot, unit } from '../sky/vector.ts';
import { type Above, facesUp, lookUp, type Met } from './above.ts';

/** A part over the mouth, or over the ring around it. */
export interface Hanging {
  readonly part: number;
  share: number;
  /** Its lowest point there, and how high that hangs over the plane of the mouth, mm. */
  height: number;
  at: Vec3;
  readonly low: [number, number, number];
  readonly high: [number, number, number];
  /** Triangles that were met, with the height of each. */
  readonly heights: Map<number, number>;
}

export interface Hangings {
  readonly parts: ReadonlyMap<number, Hanging>;
  readonly shares: Shares;
}

/**
 * What hangs over the mouth (`ring_mm` null), or over the ring of this width around it: the first thing that a look
 * straight up meets, from every point. A part that a point of the ring lies in stands beside the mouth, not over it.
 */
export function hangingOver(above: Above, mouth: Mouth, ring_mm: number | null): Hangings {
  const met: Met = { part: -1, triangle: -1, height: 0, within: false };
  const parts = new Map<number, Hanging>();
  const look = (x: number, y: number, z: number): number => {
    if (!lookUp(above, x, y, z, met) || (ring_mm !== null && met.within)) return 0;
    return met.part + 1;
  };
  const note = (x: number, y: number, z: number): void => {
    let h = parts.get(met.part);
    if (!h) {
      h = {
        part: met.part,
        share: 0,
        height: Infinity,
        at: [x, y, z],
        low: [Infinity, Infinity, Infinity],
        high: [-Infinity, -Infinity, -Infinity],
        heights: new Map(),
      };
      parts.set(met.part, h);
    }
    reach(h, x, y, z, met.height);
    h.heights.set(met.triangle, Math.min(met.height, h.heights.get(met.triangle) ?? Infinity));
  };
  const middle = (x: number, y: number, z: number): number => {
    const kind = look(x, y, z);
    if (kind > 0) note(x, y, z);
    return kind;
  };
  const shares = divideMouth(mouth, ring_mm, { kind: look, middle });
  // Where a slanting part is lowest over a rim no middle of a piece comes.
  for (const [x, y, z] of circle(mouth, (mouth.radius_mm + (ring_mm ?? 0)) * inside)) middle(x, y, z);
  for (const [kind, share] of shares.of) {
    const h = parts.get(kind - 1);
    if (h) h.share = share;
  }
  for (const h of parts.values()) lowestCorner(above, mouth, ring_mm, h);
  return { parts, shares };
}

/** The polygon that stands for the circle runs a little outside of it. */
const inside = 0.999;

function reach(h: Hanging, x: number, y: number, z: number, height: number): void {
  const at: Vec3 = [x, y, z + height];
  for (let k = 0; k < 3; k++) {
    h.low[k] = Math.min(h.low[k], at[k]);
    h.high[k] = Math.max(h.high[k], at[k]);
  }
  if (height >= h.height) return;
  h.height = height;
  h.at = at;
}

const found: Met = { part: -1, triangle: -1, height: 0, within: false };

/** A drop hangs at a corner; points spread over the mouth may pass it by. Also fills in small triangles. */
function lowestCorner(above: Above, mouth: Mouth, ring_mm: number | null, h: Hanging): void {
  const { tree } = above;
  const [nx, ny, nz] = unit(mouth.outward);
  const least = ring_mm === null ? 0 : mouth.radius_mm;
  const most = mouth.radius_mm + (ring_mm ?? 0);
  /** Height over the plane of the mouth; NaN where the point is not over the mouth or the ring. */
  const over = (x: number, y: number, z: number): number => {
    const dx = x - mouth.at_mm[0];
    const dy = y - mouth.at_mm[1];
    const plane = mouth.at_mm[2] - (nx * dx + ny * dy) / nz;
    const r = Math.hypot(dx, dy, plane - mouth.at_mm[2]);
    return r >= least && r <= most && z >= plane ? z - plane : Number.NaN;
  };
  for (let t = tree.start[h.part]; t < tree.start[h.part + 1]; t++) {
    const slot = tree.slotOf[t];
    const c = tree.corners;
    const at = slot * 9;
    for (let k = at; k < at + 9; k += 3) {
      const height = over(c[k], c[k + 1], c[k + 2]);
      if (!(height < h.height)) continue;
      const z = c[k + 2] - height;
      if (lookUp(above, c[k], c[k + 1], z, found) && found.part !== h.part && found.height < height) continue;
      reach(h, c[k], c[k + 1], z, height);
    }
    if (h.heights.has(t) || facesUp(tree, slot)) continue;
    const height = over(
      (c[at] + c[at + 3] + c[at + 6]) / 3,
      (c[at + 1] + c[at + 4] + c[at + 7]) / 3,
      (c[at + 2] + c[at + 5] + c[at + 8]) / 3,
    );
    if (height >= 0) h.heights.set(t, height);
  }
}

/** Cosine of the angle between a mouth and the vertical. */
export function facing(mouth: Mouth): number {
  return dot(unit(mouth.outward), [0, 0, 1]);
}
