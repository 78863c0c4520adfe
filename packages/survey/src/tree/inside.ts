import type { Tree } from './tree.ts';

/**
 * Which part's material a point lies in, by signed crossings of one ray to the outside: a closed part holds the
 * point when the ray leaves it more often than it enters it. Parts may overlap, and cavities count as air.
 * A part with an open border has no inside, so its crossings are not counted.
 */
export interface Material {
  readonly tree: Tree;
  /** Per part: 1 when its surface is closed. */
  readonly closed: Uint8Array;
}

export function newMaterial(tree: Tree, closed: Uint8Array): Material {
  return { tree, closed };
}

/** The flags that lie in the kernel of a tree at present. */
const loaded = new WeakMap<Tree, Uint8Array>();

/** Index of a part whose material holds the point xyz, the first in model order; -1 for air. */
export function partAt({ tree, closed }: Material, x: number, y: number, z: number): number {
  const { kernel } = tree;
  if (kernel.triangles === 0) return -1;
  if (loaded.get(tree) !== closed) {
    kernel.closed.set(closed);
    loaded.set(tree, closed);
  }
  return kernel.calls.partAt(kernel.partsRoot, kernel.work, kernel.roots, kernel.closed.byteOffset, x, y, z);
}
