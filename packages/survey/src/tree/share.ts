import type { Model } from '@coveline/model';
import { instantiate, openKernel } from './kernel.ts';
import { type TreeLayout, threads } from './layout.ts';
import { keepTree, type Tree, treeIn } from './tree.ts';
import type { Memory } from './webassembly.ts';

/** A tree as it is passed to another thread: its memory is shared, not copied. */
export interface SharedTree {
  readonly memory: Memory;
  readonly layout: TreeLayout;
}

export function shareTree({ kernel: { memory, layout } }: Tree): SharedTree {
  return { memory, layout };
}

/**
 * Lets `treeOf(model)` answer with the shared tree of an equal model. `thread`: 1 to 15, another number for each thread
 * that asks the tree at the same time; the one that built it is 0.
 */
export function adoptTree(model: Model, { memory, layout }: SharedTree, thread: number): Tree {
  if (!(thread > 0 && thread < threads))
    throw new RangeError(`Thread ${thread} has no work area: 1 to ${threads - 1} have one.`);
  const tree = treeIn(memory, openKernel(memory, instantiate(memory), layout, thread));
  keepTree(model, tree);
  return tree;
}
