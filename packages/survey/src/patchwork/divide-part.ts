import type { Model } from '@coveline/model';
import type { Tree } from '../tree/tree.ts';
import { weldOf } from '../weld/weld.ts';
import { type Bisection, bisect, halfway, longestEdge, type Point, pointAt, write } from './bisect.ts';
import { type Border, type Borders, nothing, stretch } from './borders.ts';
import { type Division, divide } from './divide.ts';
import { type Leaves, leavesOf } from './leaves.ts';
import { pieceArea } from './patches.ts';
import { sew } from './pieces.ts';

/** A question to a whole surface, triangle by triangle. */
export interface SurfaceDivision extends Division {
  /** Whether the triangle of the part has to be asked: false when all of it is of kind 0. */
  readonly isAsked: (triangle: number) => boolean;
  /** The kinds of the points of all leaves, asked together. */
  readonly ask: (leaves: Leaves) => Uint8Array;
  /** Before the pieces of a triangle are taken. */
  readonly begin: (triangle: number) => void;
  /** After all pieces of a triangle were taken. */
  readonly end: (triangle: number) => void;
  /** Before a leaf is taken as a whole: what `ask` found of it is asked for. */
  readonly recall: (leaf: number) => void;
  /** Looks that may be spent on borders, for each leaf of the part. */
  readonly looks: number;
}

/** Looks that a border costs in each leaf as long as the size that it runs through or beside, about. */
const borderLooks = 20;

/**
 * Divides all triangles of a part. They are cut into leaves without a question, each is asked at one point, and
 * where a neighbour answered otherwise the border is looked for, if that does not take more looks than allowed. If it
 * does, every leaf is what its point is: then so many borders run through so many leaves that the errors cancel out,
 * while a search for borders would miss what is smaller than a leaf more often than it would meet it. Pieces that touch
 * across an edge are joined.
 */
export function dividePart(model: Model, tree: Tree, part: number, d: SurfaceDivision): void {
  const { areas, twin } = weldOf(model.shapes[model.parts[part].shape]);
  const { corners, slotOf } = tree;
  const start = tree.start[part];
  const at = (t: number) => slotOf[start + t] * 9;
  const skin = { count: areas.length, corners, at, twin };
  const leaves = leavesOf(skin, (t) => areas[t] > 0 && d.isAsked(t), d.size_mm);
  const kinds = d.ask(leaves);
  const mixed = mixedAmong(leaves, kinds);
  const cost = costOf(leaves, mixed, d.size_mm);
  if (cost > d.looks * leaves.count) mixed.fill(0);
  const wholes = new Int32Array(leaves.count).fill(-1);
  const borders = new Map<number, Borders>();
  const laying = layer(leaves, kinds, mixed, wholes, d);
  for (let t = 0; t < areas.length; t++) {
    const first = leaves.firstOf[t];
    const end = leaves.firstOf[t + 1];
    if (first === end) continue;
    d.begin(t);
    for (let i = first; i < end; i++) {
      if (mixed[i] === 1) {
        borders.set(i, divide(leaves.corners, i * 9, d));
        continue;
      }
      d.recall(i);
      const { points, corners: c } = leaves;
      d.take(kinds[i], pieceArea(c, i * 9), points[i * 3], points[i * 3 + 1], points[i * 3 + 2]);
    }
    laying(t, at(t), corners);
    d.end(t);
  }
  join(leaves, kinds, mixed, wholes, borders, d);
}

/** Looks that it takes to find the borders in the mixed leaves. */
function costOf({ count, corners }: Leaves, mixed: Uint8Array, size_mm: number): number {
  let lengths = 0;
  for (let i = 0; i < count; i++)
    if (mixed[i] === 1) lengths += Math.ceil(longestEdge(corners, i * 9) / size_mm);
  return lengths * borderLooks;
}

/** 1 for leaves beside one of another kind, and for those beside them: a border may just come in at a corner. */
function mixedAmong({ count, contacts }: Leaves, kinds: Uint8Array): Uint8Array {
  const beside = new Uint8Array(count);
  const { numbers } = contacts;
  for (let i = 0; i < contacts.count * 6; i += 6) {
    const a = (numbers[i] / 3) | 0;
    const b = (numbers[i + 3] / 3) | 0;
    if (kinds[a] !== kinds[b]) {
      beside[a] = 1;
      beside[b] = 1;
    }
  }
  const mixed = beside.slice();
  for (let i = 0; i < contacts.count * 6; i += 6) {
    const a = (numbers[i] / 3) | 0;
    const b = (numbers[i + 3] / 3) | 0;
    if (beside[a] === 1) mixed[b] = 1;
    if (beside[b] === 1) mixed[a] = 1;
  }
  return mixed;
}

const several = -1;

/** Lays pieces for the leaves of a triangle that are of one kind, neighbours of one kind in one piece where they halve one. */
function layer(
  leaves: Leaves,
  kinds: Uint8Array,
  mixed: Uint8Array,
  wholes: Int32Array,
  d: SurfaceDivision,
): (triangle: number, at: number, corners: Float64Array) => void {
  let leaf = 0;
  const lay = (p: Point, q: Point, r: Point, kind: number, first: number, end: number) => {
    if (kind < d.gatherFrom) return;
    const piece = d.pieces.add(kind);
    write(d.pieces.corners, piece * 9, p);
    write(d.pieces.corners, piece * 9 + 3, q);
    write(d.pieces.corners, piece * 9 + 6, r);
    wholes.fill(piece, first, end);
  };
  /** Kind, or `several`; first leaf and the one after the last. */
  type Span = { kind: number; first: number; end: number };
  const how: Bisection<Span> = {
    size_mm: d.size_mm,
    leaf: () => {
      const first = leaf++;
      return { kind: mixed[first] === 1 ? several : kinds[first], first, end: leaf };
    },
    join: (p, q, r, longest, a, b) => {
      if (a.kind === b.kind) return { kind: a.kind, first: a.first, end: b.end };
      const [u, v, w] = longest === 0 ? [p, q, r] : longest === 1 ? [q, r, p] : [r, p, q];
      const m = halfway(u, v);
      if (a.kind !== several) lay(u, m, w, a.kind, a.first, a.end);
      if (b.kind !== several) lay(m, v, w, b.kind, b.first, b.end);
      return { kind: several, first: a.first, end: b.end };
    },
  };
  return (t, at, corners) => {
    leaf = leaves.firstOf[t];
    const only = leaf + 1 === leaves.firstOf[t + 1];
    if (only && (mixed[leaf] === 1 || kinds[leaf] < d.gatherFrom)) return;
    const { kind, first, end } = bisect(corners, at, how);
    if (kind === several) return;
    const [p, q, r] = [pointAt(corners, at), pointAt(corners, at + 3), pointAt(corners, at + 6)];
    lay(p, q, r, kind, first, end);
  };
}

function join(
  { contacts }: Leaves,
  kinds: Uint8Array,
  mixed: Uint8Array,
  wholes: Int32Array,
  borders: ReadonlyMap<number, Borders>,
  { pieces, gatherFrom }: SurfaceDivision,
): void {
  const { numbers } = contacts;
  const borderOf = (edge: number, from: number, to: number): Border => {
    const leaf = (edge / 3) | 0;
    if (mixed[leaf] === 0) return wholes[leaf] < 0 ? nothing : [0, 1, wholes[leaf]];
    return stretch(borders.get(leaf)?.[edge % 3] ?? nothing, from, to);
  };
  for (let i = 0; i < contacts.count * 6; i += 6) {
    const a = (numbers[i] / 3) | 0;
    const b = (numbers[i + 3] / 3) | 0;
    if (mixed[a] === 1 || mixed[b] === 1) {
      sew(
        pieces,
        borderOf(numbers[i], numbers[i + 1], numbers[i + 2]),
        borderOf(numbers[i + 3], numbers[i + 4], numbers[i + 5]),
      );
    } else if (kinds[a] === kinds[b] && kinds[a] >= gatherFrom) pieces.join(wholes[a], wholes[b]);
  }
}
