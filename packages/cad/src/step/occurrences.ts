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

/** Where the walk stands. */
interface Here {
  readonly placement: Matrix;
  readonly names: readonly string[];
  /** Product definitions from the root to the current one. */
  readonly path: readonly number[];
  /** Instances that stand for the uses on the way here, outermost first: styles may hold for one use alone. */
  readonly contexts: readonly number[];
  /** Mapped items on the way here within the current product. */
  readonly maps: number;
}

/** Steps that a walk may take; a file that maps empty representations into one another would take for ever. */
const mostSteps = limits.parts * 4;

/**
 * Throws CadError `hostile` for an assembly that contains itself or is nested too deep, `tooLarge` for more parts or
 * steps than the limit.
 */
export function walkAssembly(index: Part21Index, products: Products, colours: Colours): Walk {
  return new AssemblyWalk(index, products, colours).run();
}

class AssemblyWalk {
  readonly #index: Part21Index;
  readonly #products: Products;
  readonly #colours: Colours;
  readonly #frames: Frames;
  readonly #occurrences: Occurrence[] = [];
  readonly #losses = new Set<string>();
  readonly #reached = new Set<number>();
  readonly #bodies = new Map<number, Body | undefined>();
  /** Representations placed in another one without a component, by the one they stand in. */
  readonly #links = new Map<number, { child: number; local: Matrix }[]>();
  /** Products that were walked and placed nothing: not walked again, however often they are used. */
  readonly #empty = new Set<number>();
  #steps = 0;

  constructor(index: Part21Index, products: Products, colours: Colours) {
    this.#index = index;
    this.#products = products;
    this.#colours = colours;
    this.#frames = new Frames(index, products);
  }

  run(): Walk {
    this.#collectLinks();
    for (const root of this.#roots()) {
      this.#product(root, { placement: identity(), names: [], path: [], contexts: [], maps: 0 });
    }
    this.#orphans();
    const unowned = this.#products.unownedPlacements;
    if (unowned.length > 0) {
      this.#losses.add(
        `${unowned.length} placements in the file belong to no component (first #${unowned[0]}), so parts are missing; export it again.`,
      );
    }
    for (const [entity, words] of Object.entries(unreadEntities)) {
      const count = instancesOf(this.#index, entity).length;
      if (count === 1) this.#losses.add(`One ${words} (${entity}) cannot be read and is left out.`);
      if (count > 1) this.#losses.add(`${count} ${words}s (${entity}) cannot be read and are left out.`);
    }
    return { occurrences: this.#occurrences, losses: [...this.#losses] };
  }

  #collectLinks(): void {
    for (const link of this.#products.placedLinks) {
      const { child, parent, local } = this.#frames.link(link, -1);
      if (child < 0 || this.#products.definitionOfRepresentation.has(child)) continue;
      if (local) this.#links.set(parent, [...(this.#links.get(parent) ?? []), { child, local }]);
      else this.#losses.add(`The place of representation #${child} is missing or flat; it is left out.`);
    }
  }

  /** Products that nothing uses, neither as a component nor by mapping their shape into another product's. */
  #roots(): readonly number[] {
    const mapped = new Set<number>();
    for (const [representation, owner] of this.#products.definitionOfRepresentation) {
      for (const item of this.#frames.of(representation).items) {
        const child = this.#mappedOwner(item);
        if (child !== undefined && child !== owner) mapped.add(child);
      }
    }
    const roots = this.#products.roots.filter((root) => !mapped.has(root));
    return roots.length > 0 ? roots : this.#products.roots;
  }

  #mappedOwner(item: number): number | undefined {
    const [, source] = attributes(instance(this.#index, item), 'MAPPED_ITEM');
    const [, child] = attributes(instance(this.#index, refOf(source)), 'REPRESENTATION_MAP');
    return this.#products.definitionOfRepresentation.get(refOf(child));
  }

  #product(definition: number, here: Here): void {
    const name = this.#products.nameOf(definition) || `#${definition}`;
    if (here.path.includes(definition)) {
      throw new CadError(
        'hostile',
        `The assembly "${name}" (#${definition}) contains itself, which no machine can; export it again.`,
      );
    }
    if (here.path.length >= limits.depth) {
      throw new CadError(
        'hostile',
        `The assemblies are nested more than ${limits.depth} deep, at "${name}"; export a flatter assembly.`,
      );
    }
    if (this.#empty.has(definition)) return;
    const placedBefore = this.#occurrences.length;
    const names = [...here.names, name];
    const path = [...here.path, definition];
    const components = this.#products.components.get(definition) ?? [];
    const children = new Set(components.map((component) => component.child));
    const seen = new Set<number>();
    for (const representation of this.#products.representations.get(definition) ?? []) {
      this.#representation(representation, { ...here, names, path, maps: 0 }, seen, children);
    }
    for (const { child, relationship, contexts } of components) {
      const local = relationship < 0 ? undefined : this.#frames.link(relationship, child).local;
      if (!local) {
        this.#losses.add(
          `The place of "${this.#products.nameOf(child) || `#${child}`}" in "${name}" is missing from the file; it stands at the origin of "${name}".`,
        );
      }
      this.#product(child, {
        placement: local ? multiply(here.placement, local) : here.placement,
        names,
        path,
        contexts: [...here.contexts, ...contexts],
        maps: 0,
      });
    }
    if (this.#occurrences.length === placedBefore) this.#empty.add(definition);
  }

  /**
   * Bodies and mapped items of a representation, and of those that state the same shape. `seen`: representations that
   * the current shape has had already. `children`: products that the current one uses as components.
   */
  #representation(first: number, here: Here, seen: Set<number>, children: ReadonlySet<number>): void {
    const open: [number, Matrix][] = [[first, here.placement]];
    while (open.length > 0) {
      const [representation, placement] = open.pop()!;
      if (seen.has(representation)) continue;
      seen.add(representation);
      this.#reached.add(representation);
      this.#step();
      const at = { ...here, placement };
      const { items, context } = this.#frames.of(representation);
      for (const item of items) {
        const body = this.#body(item);
        if (body) this.#place(body, context, at);
        else this.#mapped(item, representation, at, seen, children);
      }
      const owner = this.#products.definitionOfRepresentation.get(representation);
      for (const other of this.#products.equivalents.get(representation) ?? []) {
        const otherOwner = this.#products.definitionOfRepresentation.get(other);
        if (otherOwner === undefined || owner === undefined || otherOwner === owner) {
          open.push([other, placement]);
        }
      }
      for (const { child, local } of this.#links.get(representation) ?? []) {
        open.push([child, multiply(placement, local)]);
      }
    }
  }

  /** A mapped_item repeats another representation at another place; it may mirror and scale. */
  #mapped(
    item: number,
    representation: number,
    here: Here,
    seen: ReadonlySet<number>,
    children: ReadonlySet<number>,
  ): void {
    const [, source, target] = attributes(instance(this.#index, item), 'MAPPED_ITEM');
    if (source === undefined) return;
    const [origin, child] = attributes(instance(this.#index, refOf(source)), 'REPRESENTATION_MAP');
    const mapped = refOf(child);
    const owner = this.#products.definitionOfRepresentation.get(mapped);
    // Some files state a component twice: as a component and as a mapped item.
    if (owner !== undefined && children.has(owner)) return;
    if (seen.has(mapped) || here.maps >= limits.depth) {
      throw new CadError('hostile', `The mapped item #${item} contains itself; export the file again.`);
    }
    const childUnit = this.#frames.of(mapped).mmPerUnit;
    const unit = this.#frames.of(representation).mmPerUnit;
    const local =
      frameToFrame(this.#index, refOf(origin), childUnit, refOf(target), unit) ??
      frame(this.#index, refOf(target), unit);
    if (!local) {
      this.#losses.add(
        `The place of the mapped item #${item} is missing or flat; what it repeats is left out.`,
      );
      return;
    }
    const there = { ...here, placement: multiply(here.placement, local), maps: here.maps + 1 };
    if (owner !== undefined && owner !== here.path.at(-1)) this.#product(owner, there);
    else this.#representation(mapped, there, new Set(seen), children);
  }

  /** Bodies in representations that no product reaches: kept at the origin. */
  #orphans(): void {
    const placed = new Set(this.#occurrences.map((occurrence) => occurrence.body.id));
    const here: Here = { placement: identity(), names: [], path: [], contexts: [], maps: 0 };
    for (const entity of [
      'ADVANCED_BREP_SHAPE_REPRESENTATION',
      'SHAPE_REPRESENTATION',
      'FACETED_BREP_SHAPE_REPRESENTATION',
      'MANIFOLD_SURFACE_SHAPE_REPRESENTATION',
    ]) {
      for (const id of instancesOf(this.#index, entity)) {
        if (this.#reached.has(id)) continue;
        const { items, context } = this.#frames.of(id);
        for (const item of items) {
          const body = placed.has(item) ? undefined : this.#body(item);
          if (!body) continue;
          placed.add(item);
          this.#losses.add('Bodies that belong to no product in the file are shown at the origin.');
          this.#place(body, context, here);
        }
      }
    }
  }

  #place(body: Body, context: number, { placement, names, path, contexts }: Here): void {
    if (this.#occurrences.length >= limits.parts) {
      throw new CadError(
        'tooLarge',
        `The assembly places more than ${limits.parts} bodies; export a part of the machine instead.`,
      );
    }
    let colour: Vec3 | undefined;
    // The outermost assembly that styles this use wins.
    for (const use of contexts) colour ??= this.#colours.byContext.get(use)?.get(body.id);
    const product = path.at(-1) ?? -1;
    const occurrence = { body, context, names, placement, product };
    this.#occurrences.push(colour ? { ...occurrence, colour } : occurrence);
  }

  #body(id: number): Body | undefined {
    if (!this.#bodies.has(id)) this.#bodies.set(id, bodyAt(this.#index, id));
    return this.#bodies.get(id);
  }

  #step(): void {
    if (++this.#steps > mostSteps) {
      throw new CadError(
        'tooLarge',
        `The assembly repeats its members more than ${mostSteps} times; export a part of the machine instead.`,
      );
    }
  }
}
