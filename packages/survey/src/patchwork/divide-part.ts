import type { Model } from '@coveline/model';
import type { Tree } from '../tree/tree.ts';
import { weldOf } from '../weld/weld.ts';
import { type Border, type Borders, nothing, sew } from './borders.ts';
import { type Division, divide } from './divide.ts';

/** A question to a whole surface, triangle by triangle. */
export interface SurfaceDivision extends Division {
  /** Before a triangle of the part is asked; false when all of it is of kind 0 and need not be asked. */
  readonly begin: (triangle: number) => boolean;
  /** After all pieces of a triangle were taken. */
  readonly end: (triangle: number) => void;
  /** Keeps what `middle` found, to be there again when `take` is called for the whole triangle later. */
  readonly keep: (triangle: number) => void;
  readonly recall: (triangle: number) => void;
}

const unasked = 0;
const divided = 255;

/**
 * Divides all triangles of a part. A small triangle is asked once in its middle, and divided only when a neighbour
 * answered otherwise: then the border may run through it. Pieces that touch across an edge of the mesh are joined.
 */
export function dividePart(model: Model, tree: Tree, part: number, d: SurfaceDivision): void {
  const { areas, twin } = weldOf(model.shapes[model.parts[part].shape]);
  const { corners, slotOf } = tree;
  const start = tree.start[part];
  const n = areas.length;
  // 0: not asked; 255: divided; else the kind of the middle, plus one.
  const state = new Uint8Array(n);
  const wholes = new Int32Array(n).fill(-1);
  const borders = new Map<number, Borders>();
  for (let t = 0; t < n; t++) {
    if (!(areas[t] > 0) || !d.begin(t)) continue;
    const c = slotOf[start + t] * 9;
    if (isSmall(corners, c, d.size_mm)) {
      state[t] = d.middle(middle(corners, c), middle(corners, c + 1), middle(corners, c + 2)) + 1;
      d.keep(t);
    } else {
      state[t] = divided;
      borders.set(t, divide(corners, c, d));
      d.end(t);
    }
  }
  for (let t = 0; t < n; t++) {
    if (state[t] === unasked || state[t] === divided) continue;
    const c = slotOf[start + t] * 9;
    d.begin(t);
    if (differs(state, twin, t)) borders.set(t, divide(corners, c, d));
    else {
      d.recall(t);
      const kind = state[t] - 1;
      const gathered = kind >= d.gatherFrom;
      if (gathered) {
        wholes[t] = d.pieces.add(kind);
        d.pieces.corners.set(corners.subarray(c, c + 9), wholes[t] * 9);
      }
      d.take(kind, areas[t], middle(corners, c), middle(corners, c + 1), middle(corners, c + 2), wholes[t]);
    }
    d.end(t);
  }
  const borderOf = (h: number): Border => {
    const t = (h / 3) | 0;
    if (wholes[t] >= 0) return [0, 1, wholes[t]];
    return borders.get(t)?.[h % 3] ?? nothing;
  };
  for (let h = 0; h < twin.length; h++) {
    const o = twin[h];
    if (o <= h) continue;
    const here = wholes[(h / 3) | 0];
    const there = wholes[(o / 3) | 0];
    if (here >= 0 && there >= 0) {
      if (d.pieces.kind[here] === d.pieces.kind[there]) d.pieces.join(here, there);
    } else sew(d.pieces, borderOf(h), borderOf(o));
  }
}

function differs(state: Uint8Array, twin: Int32Array, t: number): boolean {
  for (let h = 3 * t; h < 3 * t + 3; h++) {
    if (twin[h] >= 0 && state[(twin[h] / 3) | 0] !== state[t]) return true;
  }
  return false;
}

function middle(c: Float64Array, i: number): number {
  return (c[i] + c[i + 3] + c[i + 6]) / 3;
}

function isSmall(c: Float64Array, i: number, size_mm: number): boolean {
  return side(c, i, i + 3) <= size_mm && side(c, i + 3, i + 6) <= size_mm && side(c, i + 6, i) <= size_mm;
}

function side(c: Float64Array, a: number, b: number): number {
  return Math.sqrt((c[a] - c[b]) ** 2 + (c[a + 1] - c[b + 1]) ** 2 + (c[a + 2] - c[b + 2]) ** 2);
}
