import type { Model } from '@coveline/model';
import { patchesOf } from '../weld/patches.ts';
import { weldOf } from '../weld/weld.ts';
import { groupSize, meet, visitGroups } from './box-tree.ts';
import { type Crossings, crossingOf } from './crossing.ts';
import { type Eye, facing } from './look.ts';
import { newOverlap, type Overlap, onLowest, onOutline, overlapOf } from './overlap.ts';
import { leastDot, type SurfaceTree, surfaceTreeOf } from './surface-tree.ts';

/** Which triangles have others before them within the limit, and where that begins and ends. */
export interface Facing {
  /** Per triangle in model order: 1 where another one faces it. */
  readonly candidate: Uint8Array;
  /**
   * Per part: lines on its surface at which what is seen may change: two ends, the edge length that suits a mesh
   * there, the way to the middle of what is seen, and the triangle (`perLine` numbers each, see `Sizes`).
   */
  readonly borders: readonly number[][];
  readonly crossings: Crossings;
  readonly surface: SurfaceTree;
}

/** Triangles of round surfaces lean by some degrees against the true surface. */
const slack = 0.12;
/** Finest edges of a wall mesh, mm. */
const leastEdge_mm = 0.25;
/** Facets beside the line in which a round surface touches another lean by about so much: sines. */
const leastLean = 0.02;
const mostLean = 0.35;
/** A wall is meshed so finely that this share of its width is an edge at its ends. */
const acrossWall = 0.6;
/** Groups between two looks at the signal. */
const groupsAtOnce = 256;

interface Search {
  readonly model: Model;
  readonly eye: Eye;
  readonly surface: SurfaceTree;
  readonly edge_mm: number;
  readonly overlap: Overlap;
  readonly candidate: Uint8Array;
  readonly borders: number[][];
  readonly crossings: Crossings;
}

/**
 * Finds all pairs of triangles that face each other within the limit, and all pairs of two parts that run through each
 * other. Works through groups of neighbouring triangles, so that whatever is far away or turned away costs nothing.
 * `edge_mm`: the longest edge that a wall mesh may have where something changes.
 */
export function findFacing(model: Model, eye: Eye, edge_mm: number, step: (done: number) => void): Facing {
  const surface = surfaceTreeOf(eye.material.tree);
  const search: Search = {
    model,
    eye,
    surface,
    edge_mm,
    overlap: newOverlap(),
    candidate: new Uint8Array(surface.partOf.length),
    borders: model.parts.map(() => []),
    crossings: { ends: [], triangles: [] },
  };
  const { tree, turns, parts } = surface;
  const groups = tree.levels[0].length / 6;
  const box = new Float64Array(12);
  const reach = eye.limit_mm + 2 * eye.deviation_mm;
  for (let g = 0; g < groups && tree.order.length > 0; g++) {
    if (g % groupsAtOnce === 0) step(g / groups);
    for (let k = 0; k < 3; k++) {
      box[6 + k] = tree.levels[0][g * 6 + k];
      box[9 + k] = tree.levels[0][g * 6 + 3 + k];
      // Only what stands before the triangles matters.
      box[k] = box[6 + k] - reach * Math.max(0, -turns[0][g * 6 + k]) - eye.back_mm;
      box[3 + k] = box[9 + k] + reach * Math.max(0, turns[0][g * 6 + 3 + k]) + eye.back_mm;
    }
    const [first, last] = [parts[0][g * 2], parts[0][g * 2 + 1]];
    const mayFace = (level: number, other: number) =>
      leastDot(turns[0], g * 6, turns[level], other * 6) <= facing + slack;
    const mayCross = (level: number, other: number) =>
      !(first === last && parts[level][other * 2] === first && parts[level][other * 2 + 1] === first) &&
      meet(tree.levels[level], other * 6, box, 6);
    visitGroups(
      tree,
      box,
      0,
      (level, other) => mayFace(level, other) || mayCross(level, other),
      (other) => {
        if (mayFace(0, other)) faceGroups(search, g, other, reach);
        if (other <= g && mayCross(0, other)) crossGroups(search, g, other);
        return false;
      },
    );
  }
  return search;
}

const wide = new Float64Array(6);

function faceGroups(search: Search, g: number, other: number, reach: number): void {
  const { tree, normals } = search.surface;
  const end = Math.min(tree.order.length, (g + 1) * groupSize);
  const otherEnd = Math.min(tree.order.length, (other + 1) * groupSize);
  for (let i = g * groupSize; i < end; i++) {
    const a = tree.order[i];
    for (let k = 0; k < 3; k++) {
      // Only what stands before the triangle matters.
      const shift = normals[a * 3 + k] * reach;
      wide[k] = tree.boxes[a * 6 + k] + Math.min(0, shift) - search.eye.back_mm;
      wide[3 + k] = tree.boxes[a * 6 + 3 + k] + Math.max(0, shift) + search.eye.back_mm;
    }
    for (let j = other * groupSize; j < otherEnd; j++) {
      const b = tree.order[j];
      if (a === b || !meet(tree.boxes, b * 6, wide, 0)) continue;
      const dot =
        normals[a * 3] * normals[b * 3] +
        normals[a * 3 + 1] * normals[b * 3 + 1] +
        normals[a * 3 + 2] * normals[b * 3 + 2];
      if (dot <= facing + slack) face(search, a, b, dot);
    }
  }
}

const middle = new Float64Array(3);
const edge3 = new Float64Array(3);
const inward = new Float64Array(3);

/** Notes that triangle b faces a, and on a the lines at which that begins and ends. */
function face(search: Search, a: number, b: number, dot: number): void {
  const { eye, surface, overlap, candidate, borders } = search;
  const { normals, partOf } = surface;
  const { corners, slotOf } = eye.material.tree;
  const highest = eye.limit_mm + eye.deviation_mm;
  if (!overlapOf(corners, slotOf[a] * 9, slotOf[b] * 9, normals, a * 3, -eye.back_mm, highest, overlap))
    return;
  const { count, height, edge, xyz } = overlap;
  let most = Number.NEGATIVE_INFINITY;
  let least = Infinity;
  for (let i = 0; i < count; i++) {
    most = Math.max(most, height[i]);
    least = Math.min(least, height[i]);
  }
  // The neighbour beyond a shared edge, seen from there, is no wall across the air.
  if (partOf[a] === partOf[b] && most < 1e-6) return;
  candidate[a] = 1;
  candidate[b] = 1;
  const sine = Math.sqrt(Math.max(0, 1 - dot * dot));
  /** How broad a strip is that begins where the two planes cross and ends where they are too far apart. */
  const strip = sine > 1e-6 ? (-dot / sine) * eye.limit_mm : Infinity;
  const n = a * 3;
  middle.fill(0);
  for (let i = 0; i < 3 * count; i++) middle[i % 3] += xyz[i] / count;
  if (partOf[a] !== partOf[b] && sine > leastLean && sine < mostLean) addTangent(search, a, least);
  const own = acrossWall * patchWidth(search, a);
  const extent = extentOf(surface, a);
  for (let i = 0; i < count; i++) {
    let size = own;
    const isEnd =
      edge[i] >= onOutline
        ? !isSmooth(search, a, edge[i] - onOutline)
        : edge[i] >= onLowest || !goesOn(search, b, edge[i], a);
    // What is seen goes on: only a long strip needs points across.
    if (!isEnd && own > extent) continue;
    if (isEnd && edge[i] < onOutline) {
      const across = edge[i] < onLowest ? acrossWall * patchWidth(search, b) : search.edge_mm;
      size = Math.min(search.edge_mm, 0.5 * strip, across);
    }
    const j = i + 1 === count ? 0 : i + 1;
    const fine = Math.max(leastEdge_mm, size);
    const out = borders[partOf[a]];
    for (const v of [i, j]) {
      for (let k = 0; k < 3; k++) out.push(xyz[3 * v + k] - height[v] * normals[n + k]);
    }
    // Across the line and towards the middle of the overlap.
    const at = out.length - 6;
    let square = 0;
    let along = 0;
    let off = 0;
    for (let k = 0; k < 3; k++) {
      edge3[k] = out[at + 3 + k] - out[at + k];
      inward[k] = middle[k] - out[at + k];
      square += edge3[k] ** 2;
      along += edge3[k] * inward[k];
      off += normals[n + k] * inward[k];
    }
    out.push(fine);
    for (let k = 0; k < 3; k++) {
      out.push(inward[k] - (square > 0 ? (along / square) * edge3[k] : 0) - off * normals[n + k]);
    }
    out.push(a);
  }
}

/** Whether the surface beyond an edge of triangle b faces triangle a too. */
function goesOn(
  { model, eye, surface: { normals, partOf } }: Search,
  b: number,
  k: number,
  a: number,
): boolean {
  const part = partOf[b];
  const first = eye.material.tree.start[part];
  const { twin } = weldOf(model.shapes[model.parts[part].shape]);
  const h = twin[3 * (b - first) + k];
  if (h < 0) return false;
  const o = (first + ((h / 3) | 0)) * 3;
  const n = a * 3;
  return (
    normals[o] * normals[n] + normals[o + 1] * normals[n + 1] + normals[o + 2] * normals[n + 2] <= facing
  );
}

/** Notes the lowest edge of the overlap where a round surface may touch triangle a in a line. */
function addTangent({ eye, surface, overlap, borders }: Search, a: number, least: number): void {
  const { count, height, edge, xyz } = overlap;
  if (least > eye.contact_mm + 2 * eye.deviation_mm) return;
  // Surfaces that run through each other are no such case.
  for (let i = 0; i < count; i++) if (edge[i] === onLowest) return;
  const { normals, partOf } = surface;
  for (let i = 0; i < count; i++) {
    const j = i + 1 === count ? 0 : i + 1;
    if (Math.max(height[i], height[j]) > least + eye.contact_mm) continue;
    const out = borders[partOf[a]];
    for (const v of [i, j]) {
      for (let k = 0; k < 3; k++) out.push(xyz[3 * v + k] - height[v] * normals[3 * a + k]);
    }
    out.push(leastEdge_mm, 0, 0, 0, a);
  }
}

/** Longest side of the box around a triangle. */
function extentOf({ tree: { boxes } }: SurfaceTree, t: number): number {
  const i = 6 * t;
  return Math.max(boxes[i + 3] - boxes[i], boxes[i + 4] - boxes[i + 1], boxes[i + 5] - boxes[i + 2]);
}

/** Whether the surface goes on smoothly beyond an edge of a triangle. */
function isSmooth({ model, eye, surface: { partOf } }: Search, t: number, k: number): boolean {
  const part = partOf[t];
  const { smooth } = patchesOf(weldOf(model.shapes[model.parts[part].shape]));
  return smooth[3 * (t - eye.material.tree.start[part]) + k] === 1;
}

function patchWidth({ model, eye, surface: { partOf } }: Search, t: number): number {
  const part = partOf[t];
  const { patchOf, width_mm } = patchesOf(weldOf(model.shapes[model.parts[part].shape]));
  return width_mm[patchOf[t - eye.material.tree.start[part]]];
}

const piece = new Float64Array(6);

function crossGroups(search: Search, g: number, other: number): void {
  const { eye, surface, crossings } = search;
  const { tree, normals, partOf } = surface;
  const { corners, slotOf } = eye.material.tree;
  const end = Math.min(tree.order.length, (g + 1) * groupSize);
  const otherEnd = Math.min(tree.order.length, (other + 1) * groupSize);
  for (let i = g * groupSize; i < end; i++) {
    const a = tree.order[i];
    for (let j = other * groupSize; j < Math.min(i, otherEnd); j++) {
      const b = tree.order[j];
      if (partOf[a] === partOf[b] || !meet(tree.boxes, a * 6, tree.boxes, b * 6)) continue;
      if (!crossingOf(corners, slotOf[a] * 9, slotOf[b] * 9, normals, a * 3, b * 3, piece)) continue;
      for (let k = 0; k < 6; k++) crossings.ends.push(piece[k]);
      crossings.triangles.push(a, b);
      // A third part may stand in a gap: what faces a triangle then begins beside it.
      const dot =
        normals[a * 3] * normals[b * 3] +
        normals[a * 3 + 1] * normals[b * 3 + 1] +
        normals[a * 3 + 2] * normals[b * 3 + 2];
      if (dot > facing) {
        addCrossing(search, a, b, dot);
        addCrossing(search, b, a, dot);
      }
      eye.sunken[partOf[a]] = 1;
      eye.sunken[partOf[b]] = 1;
    }
  }
}

/** Notes a crossing as a line on triangle a, beside which, before triangle b, something may be seen. */
function addCrossing({ surface, borders, edge_mm }: Search, a: number, b: number, dot: number): void {
  const { normals, partOf } = surface;
  const out = borders[partOf[a]];
  for (let k = 0; k < 6; k++) out.push(piece[k]);
  out.push(edge_mm);
  for (let k = 0; k < 3; k++) out.push(edge_mm * (normals[b * 3 + k] - dot * normals[a * 3 + k]));
  out.push(a);
}
