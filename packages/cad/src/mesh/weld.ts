/**
 * Joins vertices that stand at the same place, so that triangles share them, and drops triangles that this flattens.
 *
 * Two vertices are the same when they fall into the same cell of a grid. The grid is shifted by an odd fraction, so
 * that the round numbers of drawings do not lie on its lines, where noise of 1e-12 would part them.
 */
export interface Welded {
  /** xyz per vertex, mm. */
  readonly positions: Float64Array;
  readonly triangles: Uint32Array;
  /** For each kept triangle its number before. */
  readonly kept: Uint32Array;
  /** For each old vertex its new number. */
  readonly vertexOf: Uint32Array;
}

const shift = 0.377_129;

/** `positions`: xyz per vertex; `triangles`: three indices each; `cell`: grid size, in the unit of the positions. */
export function weld(positions: Float64Array, triangles: Uint32Array, cell: number): Welded {
  const n = positions.length / 3;
  const vertexOf = new Uint32Array(n);
  const kept = new Float64Array(positions.length);
  let size = 16;
  while (size < n * 2) size *= 2;
  const table = new Int32Array(size).fill(-1);
  const cells = new Float64Array(positions.length);
  let count = 0;
  for (let i = 0; i < n; i++) {
    const a = Math.floor(positions[i * 3] / cell + shift);
    const b = Math.floor(positions[i * 3 + 1] / cell + shift);
    const c = Math.floor(positions[i * 3 + 2] / cell + shift);
    // Cells can be beyond 32 bits: fold the high part in before mixing.
    let slot = (mix(a) ^ Math.imul(mix(b), 0x9e3779b1) ^ Math.imul(mix(c), 0x85ebca6b)) & (size - 1);
    for (;;) {
      const v = table[slot];
      if (v < 0) {
        table[slot] = count;
        cells[count * 3] = a;
        cells[count * 3 + 1] = b;
        cells[count * 3 + 2] = c;
        kept[count * 3] = positions[i * 3];
        kept[count * 3 + 1] = positions[i * 3 + 1];
        kept[count * 3 + 2] = positions[i * 3 + 2];
        vertexOf[i] = count++;
        break;
      }
      if (cells[v * 3] === a && cells[v * 3 + 1] === b && cells[v * 3 + 2] === c) {
        vertexOf[i] = v;
        break;
      }
      slot = (slot + 1) & (size - 1);
    }
  }
  const out = new Uint32Array(triangles.length);
  const from = new Uint32Array(triangles.length / 3);
  let t = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    const a = vertexOf[triangles[i]];
    const b = vertexOf[triangles[i + 1]];
    const c = vertexOf[triangles[i + 2]];
    if (a === b || b === c || c === a) continue;
    out[t * 3] = a;
    out[t * 3 + 1] = b;
    out[t * 3 + 2] = c;
    from[t++] = i / 3;
  }
  return {
    positions: kept.slice(0, count * 3),
    triangles: out.slice(0, t * 3),
    kept: from.slice(0, t),
    vertexOf,
  };
}

function mix(cell: number): number {
  const low = cell | 0;
  const high = Math.floor(cell / 4_294_967_296) | 0;
  let h = Math.imul(low ^ Math.imul(high, 0x27d4eb2f), 0x2c1b3c6d);
  h ^= h >>> 15;
  h = Math.imul(h, 0x297a2d39);
  return h ^ (h >>> 13);
}
