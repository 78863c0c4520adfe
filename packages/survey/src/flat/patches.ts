import type { Weld } from '../weld/weld.ts';

/** Neighbouring level triangles belong to one face while it turns by less than this between them. */
const ridge = Math.cos(Math.PI / 180);

/** Connected faces of level triangles: for each the triangles of the shape, in growing order. */
export function levelPatches(weld: Weld, slopes: Float64Array): Uint32Array[] {
  const { twin, normals } = weld;
  const n = slopes.length;
  const seen = new Uint8Array(n);
  const patches: Uint32Array[] = [];
  const stack = new Uint32Array(n);
  const members = new Uint32Array(n);
  for (let seed = 0; seed < n; seed++) {
    if (seen[seed] || Number.isNaN(slopes[seed])) continue;
    let top = 0;
    let count = 0;
    stack[top++] = seed;
    seen[seed] = 1;
    while (top > 0) {
      const t = stack[--top];
      members[count++] = t;
      for (let h = 3 * t; h < 3 * t + 3; h++) {
        if (twin[h] < 0) continue;
        const o = (twin[h] / 3) | 0;
        if (seen[o] || Number.isNaN(slopes[o])) continue;
        const dot =
          normals[t * 3] * normals[o * 3] +
          normals[t * 3 + 1] * normals[o * 3 + 1] +
          normals[t * 3 + 2] * normals[o * 3 + 2];
        // Slivers have no normal to speak of; their slope, taken from their facet, has already let them in.
        const sliver = weld.areas[t] < 1e-3 || weld.areas[o] < 1e-3;
        if (dot < ridge && !sliver) continue;
        seen[o] = 1;
        stack[top++] = o;
      }
    }
    patches.push(members.slice(0, count).sort());
  }
  return patches;
}
