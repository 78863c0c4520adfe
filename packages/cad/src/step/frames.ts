/** Representations (what they hold, in which unit) and the motions between them. Each is worked out once. */
import type { Matrix } from '../matrix.ts';
import { attributes, instance, refOf, refsOf } from './parse.ts';
import { frame, frameToFrame } from './placement.ts';
import type { Products } from './products.ts';
import { findInstance, type Part21Index } from './scan.ts';
import { millimetresPerUnit } from './units.ts';

export interface Representation {
  readonly items: readonly number[];
  readonly context: number;
  /** 1 where the file does not say; the reader notes that elsewhere. */
  readonly mmPerUnit: number;
}

export interface Link {
  readonly child: number;
  readonly parent: number;
  /** Child to parent, mm; undefined where it is missing or flat. */
  readonly local: Matrix | undefined;
}

export class Frames {
  readonly #index: Part21Index;
  readonly #products: Products;
  readonly #representations = new Map<number, Representation>();
  readonly #links = new Map<number, Link>();

  constructor(index: Part21Index, products: Products) {
    this.#index = index;
    this.#products = products;
  }

  /** The representation at an instance; one without items where the instance is none. */
  of(id: number): Representation {
    let found = this.#representations.get(id);
    if (!found) {
      found = this.#read(id);
      this.#representations.set(id, found);
    }
    return found;
  }

  /**
   * A relationship with transformation says "rep_1 stands in rep_2", yet files swap the two and the two axes.
   * The child is known from the component (-1 where there is none); the axes are told apart by which representation
   * lists them.
   */
  link(relationship: number, childDefinition: number): Link {
    let found = this.#links.get(relationship);
    if (!found) {
      found = this.#readLink(relationship, childDefinition);
      this.#links.set(relationship, found);
    }
    return found;
  }

  /** Items and context stand second and third under whatever name the schema gives the representation. */
  #read(id: number): Representation {
    for (const list of instance(this.#index, id)?.by.values() ?? []) {
      if (list.length < 3 || !Array.isArray(list[1])) continue;
      const context = refOf(list[2]);
      const known = findInstance(this.#index, context) >= 0;
      const mmPerUnit = (known && millimetresPerUnit(this.#index, context)) || 1;
      return { items: refsOf(list[1]), context, mmPerUnit };
    }
    return { items: [], context: -1, mmPerUnit: 1 };
  }

  #readLink(relationship: number, childDefinition: number): Link {
    const index = this.#index;
    const found = instance(index, relationship);
    const [, , first, second] = attributes(found, 'REPRESENTATION_RELATIONSHIP');
    const [operator] = attributes(found, 'REPRESENTATION_RELATIONSHIP_WITH_TRANSFORMATION');
    let child = refOf(first);
    let parent = refOf(second);
    const owns = (rep: number) => this.#products.definitionOfRepresentation.get(rep) === childDefinition;
    if (childDefinition >= 0 && owns(parent) && !owns(child)) [child, parent] = [parent, child];
    const transformation = instance(index, refOf(operator));
    if (transformation?.by.has('CARTESIAN_TRANSFORMATION_OPERATOR_3D')) {
      return { child, parent, local: frame(index, refOf(operator), this.of(parent).mmPerUnit) };
    }
    const [, , one, two] = attributes(transformation, 'ITEM_DEFINED_TRANSFORMATION');
    let from = refOf(one);
    let to = refOf(two);
    const inChild = this.of(child).items;
    const inParent = this.of(parent).items;
    const asWritten = inChild.includes(from) || inParent.includes(to);
    const swapped = inChild.includes(to) || inParent.includes(from);
    if (swapped && !asWritten) [from, to] = [to, from];
    const local = frameToFrame(index, from, this.of(child).mmPerUnit, to, this.of(parent).mmPerUnit);
    return { child, parent, local };
  }
}
