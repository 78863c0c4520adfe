import type { Model } from '@coveline/model';
import { weldOf } from '../weld/weld.ts';
import { type Material, newMaterial } from './inside.ts';
import { treeOf } from './tree.ts';

/** What answers "which part is here" for a model: parts whose surface has an open border hold nothing. */
export function materialOf(model: Model): Material {
  const closed = Uint8Array.from(model.parts, ({ shape }) => (weldOf(model.shapes[shape]).closed ? 1 : 0));
  return newMaterial(treeOf(model), closed);
}
