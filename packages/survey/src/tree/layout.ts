/** Where things lie in the memory of a tree; the kernel's own offsets stand in packages/survey/kernel/layout.ts. */
export interface TreeLayout {
  readonly triangles: number;
  readonly parts: number;
  /** Addresses, bytes. Work areas and flags of closed parts: one for each thread. */
  readonly works: number;
  readonly closeds: number;
  readonly corners: number;
  readonly part: number;
  readonly numbers: number;
  readonly start: number;
  readonly box: number;
  /** Reference of each part's tree, i32. */
  readonly roots: number;
  /** Largest absolute coordinate, mm. */
  readonly magnitude: number;
  /** References: all triangles, and parts by number. */
  readonly root: number;
  readonly partsRoot: number;
}

/** Threads that can ask one tree at the same time. */
export const threads = 16;
/** Offsets in a work area, and its size. */
export const workResults = 64;
export const workBatch = 16384;
export const workBytes = 65536;

/** For a part while it is built, besides 32 bytes a triangle. */
const buildScratch = 24576;
const recordBytes = 32;
/** A node has at least two children and a leaf at least one triangle; most leaves hold three or four. */
const nodeBytes = 128;
const leafBytes = 192;

/** Most bytes that the tree of n things can need. */
export function treeBytes(n: number): number {
  return n * (nodeBytes + leafBytes);
}

/** Most pieces that the tree above the parts is built of. */
export function piecesAbove(parts: number): number {
  return parts === 1 ? 1 : 64 * parts;
}

/** Addresses of everything before the arena of nodes and leaves. */
export function planMemory(counts: readonly number[]) {
  const parts = counts.length;
  const triangles = counts.reduce((sum, n) => sum + n, 0);
  const largest = counts.reduce((most, n) => Math.max(most, n), piecesAbove(parts));
  let at = 64;
  const take = (bytes: number): number => {
    const from = at;
    at += Math.ceil(bytes / 64) * 64;
    return from;
  };
  return {
    triangles,
    parts,
    works: take(threads * workBytes),
    closeds: take(threads * parts),
    corners: take(triangles * 72),
    part: take(triangles * 4),
    numbers: take(triangles * 4),
    start: take((parts + 1) * 4),
    box: take(48),
    roots: take(parts * 4),
    records: take(parts * recordBytes),
    scratch: take(buildScratch + largest * recordBytes),
    arena: at,
  };
}
