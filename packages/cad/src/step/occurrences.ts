/** Walks the assembly from its roots and lists every body that is placed somewhere. */
import type { Vec3 } from '@coveline/model';
import { CadError } from '../error.ts';
import { limits } from '../limits.ts';
import { identity, type Matrix, multiply } from '../matrix.ts';
import { type Body, bodyAt, unreadEntities } from './bodies.ts';
import type { Colours } from './colours.ts';
import { attributes, instance, refOf, refsOf } from './parse.ts';
import { frame, frameToFrame } from './placement.ts';
import type { Products } from './products.ts';
import { findInstance, instancesOf, type Part21Index } from './scan.ts';
import { millimetresPerUnit } from './units.ts';

export interface Occurrence {
  readonly body: Body;
  /** Context with the units that the body is written in. */
  readonly context: number;
  /** Names of the products from the root down to the one that owns the body. */
  readonly names: readonly string[];
  /** Body frame to model frame, mm; may mirror or scale. */
  readonly placement: Matrix;
  /** Colour that the assembly gives to this use of the body. */
  readonly colour?: Vec3;
}

export interface Walk {
  readonly occurrences: readonly Occurrence[];
  /** Sentences about what could not be followed. */
  readonly losses: readonly string[];
}

interface State {
  readonly index: Part21Index;
  readonly products: Products;
  readonly colours: Colours;
  readonly occurrences: Occurrence[];
  readonly losses: Set<string>;
  readonly reached: Set<number>;
  readonly bodies: Map<number, Body | undefined>;
  readonly scales: Map<number, number>;
  /** Representations placed in another one without a component, by the one they stand in. */
  readonly links: Map<number, { child: number; local: Matrix }[]>;
}

/** Throws CadError `hostile` for an assembly that contains itself, `tooLarge` for more parts than the limit. */
export function walkAssembly(index: Part21Index, products: Products, colours: Colours): Walk {
  const state: State = {
    index,
    products,
    colours,
    occurrences: [],
    losses: new Set(),
    reached: new Set(),
    bodies: new Map(),
    scales: new Map(),
    links: new Map(),
  };
  for (const link of products.placedLinks) {
    const { child, parent, local } = linkPlacement(state, link, -1);
    if (child < 0 || products.definitionOfRepresentation.has(child)) continue;
    if (local) state.links.set(parent, [...(state.links.get(parent) ?? []), { child, local }]);
    else state.losses.add(`The place of representation #${child} is missing or flat; it is left out.`);
  }
  for (const root of products.roots) walkProduct(state, root, identity(), [], [], []);
  walkOrphans(state);
  for (const [entity, words] of Object.entries(unreadEntities)) {
    const count = instancesOf(index, entity).length;
    if (count > 0) {
      state.losses.add(
        `${count} ${words}${count > 1 ? 's' : ''} (${entity}) cannot be read and are left out.`,
      );
    }
  }
  return { occurrences: state.occurrences, losses: [...state.losses] };
}

function walkProduct(
  state: State,
  definition: number,
  placement: Matrix,
  names: readonly string[],
  path: readonly number[],
  relationships: readonly number[],
): void {
  const { products } = state;
  const name = products.nameOf(definition) || `#${definition}`;
  if (path.includes(definition)) {
    throw new CadError(
      'hostile',
      `The assembly "${name}" (#${definition}) contains itself, which no machine can; export it again.`,
    );
  }
  if (path.length >= limits.depth) {
    throw new CadError(
      'hostile',
      `The assemblies are nested more than ${limits.depth} deep, at "${name}"; export a flatter assembly.`,
    );
  }
  const here = [...names, name];
  const below = [...path, definition];
  const components = products.components.get(definition) ?? [];
  const componentChildren = new Set(components.map((c) => c.child));
  for (const representation of products.representations.get(definition) ?? []) {
    walkRepresentation(
      state,
      representation,
      placement,
      here,
      relationships,
      new Set(),
      componentChildren,
      below,
    );
  }
  for (const { child, relationship } of components) {
    const local = relationship < 0 ? undefined : componentPlacement(state, relationship, child);
    if (!local) {
      state.losses.add(
        `The place of "${products.nameOf(child) || `#${child}`}" in "${name}" is missing from the file; it stands at the origin of "${name}".`,
      );
    }
    walkProduct(state, child, local ? multiply(placement, local) : placement, here, below, [
      ...relationships,
      relationship,
    ]);
  }
}

/** Bodies and mapped items of a representation and of those that state the same shape. */
function walkRepresentation(
  state: State,
  representation: number,
  placement: Matrix,
  names: readonly string[],
  relationships: readonly number[],
  seen: Set<number>,
  skip: ReadonlySet<number>,
  path: readonly number[],
): void {
  if (seen.has(representation)) return;
  seen.add(representation);
  state.reached.add(representation);
  const { index, products } = state;
  const [items, context] = representationOf(index, representation);
  for (const item of items) {
    const body = bodyOf(state, item);
    if (body) place(state, { body, context, names, placement }, item, relationships);
    else mapped(state, item, representation, placement, names, relationships, seen, skip, path);
  }
  const owner = products.definitionOfRepresentation.get(representation);
  for (const other of products.equivalents.get(representation) ?? []) {
    const otherOwner = products.definitionOfRepresentation.get(other);
    if (otherOwner !== undefined && owner !== undefined && otherOwner !== owner) continue;
    walkRepresentation(state, other, placement, names, relationships, seen, skip, path);
  }
  for (const { child, local } of state.links.get(representation) ?? []) {
    walkRepresentation(state, child, multiply(placement, local), names, relationships, seen, skip, path);
  }
}

/** A mapped_item repeats another representation at another place; it may mirror and scale. */
function mapped(
  state: State,
  item: number,
  representation: number,
  placement: Matrix,
  names: readonly string[],
  relationships: readonly number[],
  seen: ReadonlySet<number>,
  skip: ReadonlySet<number>,
  path: readonly number[],
): void {
  const { index, products } = state;
  const list = attributes(instance(index, item), 'MAPPED_ITEM');
  if (list.length === 0) return;
  const [, source, target] = list;
  const [origin, child] = attributes(instance(index, refOf(source)), 'REPRESENTATION_MAP');
  const childId = refOf(child);
  const owner = products.definitionOfRepresentation.get(childId);
  if (owner !== undefined && skip.has(owner)) return;
  if (seen.has(childId) || seen.size > limits.depth) {
    throw new CadError('hostile', `The mapped item #${item} contains itself; export the file again.`);
  }
  const childScale = scaleOf(state, childId);
  const scale = scaleOf(state, representation);
  const local =
    frameToFrame(index, refOf(origin), childScale, refOf(target), scale) ??
    frame(index, refOf(target), scale);
  if (!local) {
    state.losses.add(
      `The place of the mapped item #${item} is missing or flat; what it repeats is left out.`,
    );
    return;
  }
  const there = multiply(placement, local);
  if (owner !== undefined && !path.includes(owner)) {
    walkProduct(state, owner, there, names, path, relationships);
  } else {
    walkRepresentation(state, childId, there, names, relationships, new Set(seen), skip, path);
  }
}

function componentPlacement(state: State, relationship: number, child: number): Matrix | undefined {
  return linkPlacement(state, relationship, child).local;
}

/**
 * A relationship with transformation says "rep_1 stands in rep_2", yet files swap the two and the two axes.
 * The child is known from the component; the axes are told apart by which representation lists them.
 */
function linkPlacement(
  state: State,
  relationship: number,
  childDefinition: number,
): { child: number; parent: number; local: Matrix | undefined } {
  const { index, products } = state;
  const found = instance(index, relationship);
  const [, , first, second] = attributes(found, 'REPRESENTATION_RELATIONSHIP');
  const [operator] = attributes(found, 'REPRESENTATION_RELATIONSHIP_WITH_TRANSFORMATION');
  let child = refOf(first);
  let parent = refOf(second);
  const owns = (rep: number) => products.definitionOfRepresentation.get(rep) === childDefinition;
  if (childDefinition >= 0 && owns(parent) && !owns(child)) [child, parent] = [parent, child];
  const transformation = instance(index, refOf(operator));
  if (transformation?.by.has('CARTESIAN_TRANSFORMATION_OPERATOR_3D')) {
    return { child, parent, local: frame(index, refOf(operator), scaleOf(state, parent)) };
  }
  const [, , one, two] = attributes(transformation, 'ITEM_DEFINED_TRANSFORMATION');
  let from = refOf(one);
  let to = refOf(two);
  const [childItems] = representationOf(index, child);
  const [parentItems] = representationOf(index, parent);
  const asWritten = childItems.includes(from) || parentItems.includes(to);
  const swapped = childItems.includes(to) || parentItems.includes(from);
  if (swapped && !asWritten) [from, to] = [to, from];
  const local = frameToFrame(index, from, scaleOf(state, child), to, scaleOf(state, parent));
  return { child, parent, local };
}

/** Bodies in representations that no product reaches: kept at the origin, under the representation's own name. */
function walkOrphans(state: State): void {
  const { index } = state;
  const placed = new Set(state.occurrences.map((o) => o.body.id));
  for (const entity of [
    'ADVANCED_BREP_SHAPE_REPRESENTATION',
    'SHAPE_REPRESENTATION',
    'FACETED_BREP_SHAPE_REPRESENTATION',
    'MANIFOLD_SURFACE_SHAPE_REPRESENTATION',
  ]) {
    for (const id of instancesOf(index, entity)) {
      if (state.reached.has(id)) continue;
      const [items, context] = representationOf(index, id);
      for (const item of items) {
        const body = placed.has(item) ? undefined : bodyOf(state, item);
        if (!body) continue;
        placed.add(item);
        state.losses.add('Bodies that belong to no product in the file are shown at the origin.');
        place(state, { body, context, names: [], placement: identity() }, item, []);
      }
    }
  }
}

function place(state: State, occurrence: Occurrence, item: number, relationships: readonly number[]): void {
  if (state.occurrences.length >= limits.parts) {
    throw new CadError(
      'tooLarge',
      `The assembly places more than ${limits.parts} bodies; export a part of the machine instead.`,
    );
  }
  let colour: Vec3 | undefined;
  for (const relationship of relationships) {
    const under = state.colours.byComponent.get(relationship);
    colour ??= under?.get(item);
  }
  state.occurrences.push(colour ? { ...occurrence, colour } : occurrence);
}

function bodyOf(state: State, id: number): Body | undefined {
  if (!state.bodies.has(id)) state.bodies.set(id, bodyAt(state.index, id));
  return state.bodies.get(id);
}

/** Items and context of a representation, under whatever name the schema gives it. */
function representationOf(index: Part21Index, id: number): readonly [readonly number[], number] {
  const found = instance(index, id);
  if (!found) return [[], -1];
  for (const list of found.by.values()) {
    if (list.length >= 3 && Array.isArray(list[1])) return [refsOf(list[1]), refOf(list[2])];
  }
  return [[], -1];
}

/** Millimetres per unit of a representation. 1 where the file does not say; the reader notes that elsewhere. */
function scaleOf(state: State, representation: number): number {
  let scale = state.scales.get(representation);
  if (scale === undefined) {
    const [, context] = representationOf(state.index, representation);
    scale = (findInstance(state.index, context) >= 0 && millimetresPerUnit(state.index, context)) || 1;
    state.scales.set(representation, scale);
  }
  return scale;
}
