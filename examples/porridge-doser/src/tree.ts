/** The machine as a builder draws it: assemblies of assemblies of bodies, each placed in the one above it. */
import type { Shape3D } from 'replicad';

export type Point3 = readonly [number, number, number];

/** Turn about an axis through the origin first, then move. Degrees, mm. */
export interface Motion {
  readonly move: Point3;
  readonly turn?: { readonly axis: 'x' | 'y' | 'z'; readonly deg: number };
}

/** One shape with its name and colour; the same object placed twice is one product used twice. */
export interface Body {
  readonly kind: 'body';
  readonly name: string;
  /** sRGB, "#rrggbb". */
  readonly color: string;
  readonly shape: Shape3D;
}

export interface Assembly {
  readonly kind: 'assembly';
  readonly name: string;
  readonly children: readonly Placed[];
}

export interface Placed {
  readonly what: Body | Assembly;
  readonly motion: Motion;
}

export function body(name: string, color: string, shape: Shape3D): Body {
  return { kind: 'body', name, color, shape };
}

export function assembly(name: string, children: readonly Placed[]): Assembly {
  return { kind: 'assembly', name, children };
}

export function at(what: Body | Assembly, x: number, y: number, z: number): Placed {
  return { what, motion: { move: [x, y, z] } };
}

/** Turned about an axis through its own origin, then moved. */
export function turned(
  what: Body | Assembly,
  axis: 'x' | 'y' | 'z',
  deg: number,
  x: number,
  y: number,
  z: number,
): Placed {
  return { what, motion: { move: [x, y, z], turn: { axis, deg } } };
}

/** Where it was drawn. */
export function here(what: Body | Assembly): Placed {
  return at(what, 0, 0, 0);
}

export interface PlacedBody {
  /** Names from the root to the body, joined by "/", with "#n" for the n-th namesake. */
  readonly id: string;
  readonly name: string;
  readonly body: Body;
  /** Outermost first. */
  readonly motions: readonly Motion[];
}

/** Every body of the tree, in the order in which it is written. */
export function placedBodies(root: Assembly): PlacedBody[] {
  const found: PlacedBody[] = [];
  const seen = new Map<string, number>();
  const walk = (what: Body | Assembly, path: readonly string[], motions: readonly Motion[]): void => {
    const here = [...path, what.name];
    if (what.kind === 'assembly') {
      for (const child of what.children) walk(child.what, here, [...motions, child.motion]);
      return;
    }
    const base = here.join('/');
    const n = (seen.get(base) ?? 0) + 1;
    seen.set(base, n);
    found.push({ id: n === 1 ? base : `${base}#${n}`, name: what.name, body: what, motions });
  };
  walk(root, [], []);
  return found;
}
