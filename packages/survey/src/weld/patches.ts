import { facetsOf } from './facets.ts';
import { groupOf, newGroups, unite } from './groups.ts';
import { edgeLength, turnAt } from './turn.ts';
import type { Weld } from './weld.ts';

/** Smooth pieces of a surface, parted by the edges at which it turns by more than 35 degrees, either way. */
export interface Patches {
  /** Lowest triangle of the patch, per triangle. */
  readonly patchOf: Uint32Array;
  /** Per half-edge: 1 where the surface goes on smoothly beyond it. */
  readonly smooth: Uint8Array;
  /** Per patch, at its lowest triangle: twice its area over the length of its edges, mm: the width of a long strip. */
  readonly width_mm: Float64Array;
}

const sharp = (35 * Math.PI) / 180;
const known = new WeakMap<Weld, Patches>();

/** Patches of a weld, found once. */
export function patchesOf(weld: Weld): Patches {
  let patches = known.get(weld);
  if (!patches) {
    patches = findPatches(weld);
    known.set(weld, patches);
  }
  return patches;
}

function findPatches(weld: Weld): Patches {
  const { twin, areas } = weld;
  const { facetOf, normals } = facetsOf(weld);
  const n = areas.length;
  const smooth = new Uint8Array(twin.length);
  const groups = newGroups(n);
  for (let h = 0; h < twin.length; h++) {
    if (twin[h] < h) continue;
    if (Math.abs(turnAt(weld, h, normals, facetOf)) >= sharp) continue;
    smooth[h] = 1;
    smooth[twin[h]] = 1;
    unite(groups, (h / 3) | 0, (twin[h] / 3) | 0);
  }
  const patchOf = new Uint32Array(n);
  const area = new Float64Array(n);
  const edge = new Float64Array(n);
  for (let t = 0; t < n; t++) {
    const p = groupOf(groups, t);
    patchOf[t] = p;
    area[p] += areas[t];
    for (let h = 3 * t; h < 3 * t + 3; h++) if (smooth[h] === 0) edge[p] += edgeLength(weld, h);
  }
  const width_mm = area.map((a, p) => (edge[p] > 0 ? (2 * a) / edge[p] : 2 * Math.sqrt(a)));
  return { patchOf, smooth, width_mm };
}
