/** Walks the assembly from its roots and lists every body that is placed somewhere. */
import type { Vec3 } from '@coveline/model';
import { CadError } from '../error.ts';
import { limits } from '../limits.ts';
import { identity, type Matrix, multiply } from '../matrix.ts';
import { type Body, bodyAt, unreadEntities } from './bodies.ts';
import type { Colours } from './colours.ts';
import { Frames } from './frames.ts';
import { attributes, instance, refOf } from './parse.ts';
import { frame, frameToFrame } from './placement.ts';
import type { Products } from './products.ts';
import { instancesOf, type Part21Index } from './scan.ts';

export interface Occurrence {
  readonly body: Body;
  /** Context with the units that the body is written in. */
  readonly context: number;
  /** Names of the products from the root down to the one that owns the body. */
  readonly names: readonly string[];
  /** Product definition that owns the body; -1 where none does. */
  readonly product: number;
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
  readonly frames: Frames;
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
    frames: new Frames(index, products),
    links: new Map(),
  };
  for (const link of products.placedLinks) {
    const { child, parent, local } = state.frames.link(link, -1);
    if (child < 0 || products.definitionOfRepresentation.has(child)) continue;
    if (local) state.links.set(parent, [...(state.links.get(parent) ?? []), { child, local }]);
    else state.losses.add(`The place of representation #${child} is missing or flat; it is left out.`);
  }
  for (const root of products.roots) walkProduct(state, root, identity(), [], [], []);
  walkOrphans(state);
  const unowned = products.unownedPlacements;
  if (unowned.length > 0) {
    state.losses.add(
      `${unowned.length} placements in the file belong to no component (first #${unowned[0]}), so parts are missing; export it again.`,
    );
  }
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
  contexts: readonly number[],
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
    walkRepresentation(state, representation, placement, here, contexts, new Set(), componentChildren, below);
  }
  for (const { child, relationship, contexts: own } of components) {
    const local = relationship < 0 ? undefined : state.frames.link(relationship, child).local;
    if (!local) {
      state.losses.add(
        `The place of "${products.nameOf(child) || `#${child}`}" in "${name}" is missing from the file; it stands at the origin of "${name}".`,
      );
    }
    walkProduct(state, child, local ? multiply(placement, local) : placement, here, below, [
      ...contexts,
      ...own,
    ]);
  }
}

/** Bodies and mapped items of a representation and of those that state the same shape. */
function walkRepresentation(
  state: State,
  representation: number,
  placement: Matrix,
  names: readonly string[],
  contexts: readonly number[],
  seen: Set<number>,
  skip: ReadonlySet<number>,
  path: readonly number[],
): void {
  if (seen.has(representation)) return;
  seen.add(representation);
  state.reached.add(representation);
  const { products } = state;
  const { items, context } = state.frames.of(representation);
  for (const item of items) {
    const body = bodyOf(state, item);
    if (body) place(state, { body, context, names, placement, product: path.at(-1) ?? -1 }, item, contexts);
    else mapped(state, item, representation, placement, names, contexts, seen, skip, path);
  }
  const owner = products.definitionOfRepresentation.get(representation);
  for (const other of products.equivalents.get(representation) ?? []) {
    const otherOwner = products.definitionOfRepresentation.get(other);
    if (otherOwner !== undefined && owner !== undefined && otherOwner !== owner) continue;
    walkRepresentation(state, other, placement, names, contexts, seen, skip, path);
  }
  for (const { child, local } of state.links.get(representation) ?? []) {
    walkRepresentation(state, child, multiply(placement, local), names, contexts, seen, skip, path);
  }
}

/** A mapped_item repeats another representation at another place; it may mirror and scale. */
function mapped(
  state: State,
  item: number,
  representation: number,
  placement: Matrix,
  names: readonly string[],
  contexts: readonly number[],
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
  const childScale = state.frames.of(childId).mmPerUnit;
  const scale = state.frames.of(representation).mmPerUnit;
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
    walkProduct(state, owner, there, names, path, contexts);
  } else {
    walkRepresentation(state, childId, there, names, contexts, new Set(seen), skip, path);
  }
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
      const { items, context } = state.frames.of(id);
      for (const item of items) {
        const body = placed.has(item) ? undefined : bodyOf(state, item);
        if (!body) continue;
        placed.add(item);
        state.losses.add('Bodies that belong to no product in the file are shown at the origin.');
        place(state, { body, context, names: [], placement: identity(), product: -1 }, item, []);
      }
    }
  }
}

function place(state: State, occurrence: Occurrence, item: number, contexts: readonly number[]): void {
  if (state.occurrences.length >= limits.parts) {
    throw new CadError(
      'tooLarge',
      `The assembly places more than ${limits.parts} bodies; export a part of the machine instead.`,
    );
  }
  let colour: Vec3 | undefined;
  // The outermost assembly that styles this use wins.
  for (const context of contexts) colour ??= state.colours.byContext.get(context)?.get(item);
  state.occurrences.push(colour ? { ...occurrence, colour } : occurrence);
}

function bodyOf(state: State, id: number): Body | undefined {
  if (!state.bodies.has(id)) state.bodies.set(id, bodyAt(state.index, id));
  return state.bodies.get(id);
}
