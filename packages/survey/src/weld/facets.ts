import { following } from './pair.ts';
import { edgeLength, turnAt } from './turn.ts';
import type { Weld } from './weld.ts';

/** Flat pieces of a surface: triangles that lie in one plane and hang together, numbered by their first triangle. */
export interface Facets {
  readonly facetOf: Uint32Array;
  /** Unit normal per facet, from all its triangles. */
  readonly normals: Float64Array;
  /** mm2 */
  readonly areas: Float64Array;
}

/** A triangle lies in the plane of the first one of its facet when their normals differ by less than this. */
const flatCosine = Math.cos((0.5 * Math.PI) / 180);
/** A triangle lower than this has a normal that single precision cannot tell; it joins the neighbour that fits best. */
const sliver_mm = 2e-3;
/** Slivers side by side hand the facet on from one to the next, this often at most. */
const sliverRounds = 8;
const none = 0xffffffff;

const known = new WeakMap<Weld, Facets>();

/** Facets of a weld, found once. */
export function facetsOf(weld: Weld): Facets {
  let facets = known.get(weld);
  if (!facets) {
    facets = findFacets(weld);
    known.set(weld, facets);
  }
  return facets;
}

function findFacets(weld: Weld): Facets {
  const { triangles, twin, normals } = weld;
  const n = triangles.length / 3;
  const facetOf = new Uint32Array(n).fill(none);
  const sliver = new Uint8Array(n);
  for (let t = 0; t < n; t++) sliver[t] = isSliver(weld, t) ? 1 : 0;
  const stack = new Uint32Array(n);
  let used = 0;
  for (let seed = 0; seed < n; seed++) {
    if (facetOf[seed] !== none || sliver[seed]) continue;
    const facet = used++;
    const x = normals[seed * 3];
    const y = normals[seed * 3 + 1];
    const z = normals[seed * 3 + 2];
    let top = 0;
    stack[top++] = seed;
    facetOf[seed] = facet;
    while (top > 0) {
      const t = stack[--top];
      for (let h = 3 * t; h < 3 * t + 3; h++) {
        if (twin[h] < 0) continue;
        const o = (twin[h] / 3) | 0;
        if (facetOf[o] !== none || sliver[o]) continue;
        if (normals[o * 3] * x + normals[o * 3 + 1] * y + normals[o * 3 + 2] * z < flatCosine) continue;
        facetOf[o] = facet;
        stack[top++] = o;
      }
    }
  }
  used = placeSlivers(weld, facetOf, sliver, used);
  return summed(weld, facetOf, used);
}

function isSliver({ triangles, positions: p, areas }: Weld, t: number): boolean {
  let longest = 0;
  for (let k = 0; k < 3; k++) {
    const a = triangles[3 * t + k] * 3;
    const b = triangles[following(3 * t + k)] * 3;
    const x = p[b] - p[a];
    const y = p[b + 1] - p[a + 1];
    const z = p[b + 2] - p[a + 2];
    longest = Math.max(longest, x * x + y * y + z * z);
  }
  return 2 * areas[t] < sliver_mm * Math.sqrt(longest);
}

/** Gives every sliver the facet of a neighbour, or one of its own; returns the number of facets. */
function placeSlivers(weld: Weld, facetOf: Uint32Array, sliver: Uint8Array, used: number): number {
  let open = true;
  for (let round = 0; round < sliverRounds && open; round++) {
    open = false;
    for (let t = 0; t < sliver.length; t++) {
      if (!sliver[t] || facetOf[t] !== none) continue;
      const h = bestNeighbour(weld, facetOf, t);
      if (h < 0) open = true;
      else facetOf[t] = facetOf[(weld.twin[h] / 3) | 0];
    }
  }
  for (let t = 0; t < sliver.length; t++) if (facetOf[t] === none) facetOf[t] = used++;
  return used;
}

/** Half-edge towards the placed neighbour that a sliver turns least against; the longest edge where it has no normal. */
function bestNeighbour(weld: Weld, facetOf: Uint32Array, t: number): number {
  let best = -1;
  let least = Infinity;
  for (let h = 3 * t; h < 3 * t + 3; h++) {
    if (weld.twin[h] < 0 || facetOf[(weld.twin[h] / 3) | 0] === none) continue;
    const cost = weld.areas[t] === 0 ? -edgeLength(weld, h) : Math.abs(turnAt(weld, h, weld.normals));
    if (cost >= least) continue;
    least = cost;
    best = h;
  }
  return best;
}

function summed(weld: Weld, facetOf: Uint32Array, used: number): Facets {
  const normals = new Float64Array(used * 3);
  const areas = new Float64Array(used);
  for (let t = 0; t < facetOf.length; t++) {
    const f = facetOf[t];
    areas[f] += weld.areas[t];
    for (let k = 0; k < 3; k++) normals[f * 3 + k] += weld.areas[t] * weld.normals[t * 3 + k];
  }
  for (let f = 0; f < used; f++) {
    const length = Math.hypot(normals[f * 3], normals[f * 3 + 1], normals[f * 3 + 2]);
    if (length > 0) for (let k = 0; k < 3; k++) normals[f * 3 + k] /= length;
  }
  return { facetOf, normals, areas };
}
