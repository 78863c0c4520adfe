import { edgeValue, newEdgeTable, setEdgeValue, unknown } from './edge-table.ts';
import { isTooLong, isTooLongThere, type Sizes } from './sizes.ts';

/** Triangles with a mark per half-edge, which its pieces keep, and a source per triangle, which its pieces keep too. */
export interface Coarse {
  /** xyz per vertex, mm. */
  readonly xyz: readonly number[];
  readonly triangles: Uint32Array;
  readonly source: Uint32Array;
  readonly border: Uint8Array;
}

export interface Fine {
  readonly xyz: Float64Array;
  readonly triangles: Uint32Array;
  readonly source: Uint32Array;
  readonly border: Uint8Array;
}

/** Stops a refinement that would not end: edges are halved this often at most. */
const mostPasses = 24;
/** Triangles this many times longer than high may be cut like a zip. */
const slender = 4;
/** Triangles between two looks at the signal. */
const trianglesAtOnce = 8192;

/**
 * Halves every edge that is too long, again and again. Whether an edge is halved depends on the edge alone, so both of
 * its triangles agree and the pieces fit together.
 */
export function refine(coarse: Coarse, sizes: Sizes, step: () => void): Fine {
  const xyz = coarse.xyz.slice();
  const middles = newEdgeTable(coarse.source.length * 8);
  /** Vertex in the middle of an edge, -1 when it stays whole. */
  const middleOf = (a: number, b: number): number => {
    const low = Math.min(a, b);
    const high = Math.max(a, b);
    const known = edgeValue(middles, low, high);
    if (known !== unknown) return known;
    let m = -1;
    // From the lower vertex, so that both triangles ask the same.
    if (isTooLong(sizes, xyz, 3 * low, 3 * high)) {
      m = xyz.length / 3;
      xyz.push(
        (xyz[3 * a] + xyz[3 * b]) / 2,
        (xyz[3 * a + 1] + xyz[3 * b + 1]) / 2,
        (xyz[3 * a + 2] + xyz[3 * b + 2]) / 2,
      );
    }
    setEdgeValue(middles, low, high, m);
    return m;
  };
  const shorter = (a: number, b: number, c: number, d: number): boolean => {
    let difference = 0;
    for (let k = 0; k < 3; k++) {
      difference += (xyz[3 * a + k] - xyz[3 * b + k]) ** 2 - (xyz[3 * c + k] - xyz[3 * d + k]) ** 2;
    }
    return difference < 0;
  };
  /** Whether a triangle is much longer than high, and no higher than an edge may be long anywhere in it. */
  const isThin = (a: number, b: number, c: number): boolean => {
    const ux = xyz[3 * b] - xyz[3 * a];
    const uy = xyz[3 * b + 1] - xyz[3 * a + 1];
    const uz = xyz[3 * b + 2] - xyz[3 * a + 2];
    const vx = xyz[3 * c] - xyz[3 * a];
    const vy = xyz[3 * c + 1] - xyz[3 * a + 1];
    const vz = xyz[3 * c + 2] - xyz[3 * a + 2];
    const nx = uy * vz - uz * vy;
    const ny = uz * vx - ux * vz;
    const nz = ux * vy - uy * vx;
    const uu = ux * ux + uy * uy + uz * uz;
    const vv = vx * vx + vy * vy + vz * vz;
    const longest = Math.max(uu, vv, uu + vv - 2 * (ux * vx + uy * vy + uz * vz));
    const height = Math.sqrt((nx * nx + ny * ny + nz * nz) / longest);
    if (height * height * slender * slender > longest) return false;
    const wide = (v: number) => isTooLongThere(sizes, xyz, 3 * v, 3 * v, height);
    return !wide(a) && !wide(b) && !wide(c);
  };
  /** All vertices from a to b along their edge, once it is halved as often as it will be; without b. */
  const along = (a: number, b: number, out: number[]): number[] => {
    const m = middleOf(a, b);
    if (m < 0) out.push(a);
    else along(m, b, along(a, m, out));
    return out;
  };
  const done = newPile();
  /**
   * Cuts a thin triangle across its longest edge in one go, like the teeth of a zip. Halving it would leave three
   * thin triangles in place of one each time. False when the longest edge stays whole.
   */
  const zip = (a: number, b: number, c: number, p: number, q: number, r: number, s: number): boolean => {
    const square = (u: number, v: number) =>
      (xyz[3 * u] - xyz[3 * v]) ** 2 +
      (xyz[3 * u + 1] - xyz[3 * v + 1]) ** 2 +
      (xyz[3 * u + 2] - xyz[3 * v + 2]) ** 2;
    for (let turn = 0; turn < 2 && square(a, b) < Math.max(square(b, c), square(c, a)); turn++) {
      [a, b, c] = [b, c, a];
      [p, q, r] = [q, r, p];
    }
    if (middleOf(a, b) < 0) return false;
    const low = along(a, b, []);
    // The other two edges from a to b; vertices up to `corner` lie on the edge a to c.
    const high = along(a, c, []);
    const corner = high.length;
    along(c, b, high);
    const forward = (v: number): number => {
      let dot = 0;
      for (let k = 0; k < 3; k++)
        dot += (xyz[3 * v + k] - xyz[3 * a + k]) * (xyz[3 * b + k] - xyz[3 * a + k]);
      return dot;
    };
    const tag = (j: number) => (j <= corner ? r : q);
    put(done, a, low[1], high[1], p, 0, tag(1), s);
    let i = 1;
    let j = 1;
    while (i + 1 < low.length || j + 1 < high.length) {
      const lowFirst =
        j + 1 >= high.length || (i + 1 < low.length && forward(low[i + 1]) <= forward(high[j + 1]));
      if (lowFirst) {
        put(done, low[i], low[i + 1], high[j], p, 0, 0, s);
        i++;
      } else {
        put(done, low[i], high[j + 1], high[j], 0, tag(j + 1), 0, s);
        j++;
      }
    }
    put(done, low[i], b, high[j], p, tag(j + 1), 0, s);
    return true;
  };
  let todo = newPile();
  for (let t = 0; t < coarse.source.length; t++) {
    const { triangles: v, border: m } = coarse;
    const i = 3 * t;
    put(todo, v[i], v[i + 1], v[i + 2], m[i], m[i + 1], m[i + 2], coarse.source[t]);
  }
  for (let pass = 0; pass < mostPasses && todo.source.length > 0; pass++) {
    const next = newPile();
    for (let t = 0; t < todo.source.length; t++) {
      if (t % trianglesAtOnce === 0) step();
      const s = todo.source[t];
      let [a, b, c] = [todo.corners[3 * t], todo.corners[3 * t + 1], todo.corners[3 * t + 2]];
      let [p, q, r] = [todo.border[3 * t], todo.border[3 * t + 1], todo.border[3 * t + 2]];
      if (isThin(a, b, c) && zip(a, b, c, p, q, r, s)) continue;
      let [ab, bc, ca] = [middleOf(a, b), middleOf(b, c), middleOf(c, a)];
      const count = (ab >= 0 ? 1 : 0) + (bc >= 0 ? 1 : 0) + (ca >= 0 ? 1 : 0);
      if (count === 0) {
        put(done, a, b, c, p, q, r, s);
        continue;
      }
      if (count === 3) {
        put(next, a, ab, ca, p, 0, r, s);
        put(next, ab, b, bc, p, q, 0, s);
        put(next, ca, bc, c, 0, q, r, s);
        put(next, ab, bc, ca, 0, 0, 0, s);
        continue;
      }
      // Turn the corners until the edge that differs from the two others stands first (one cut) or last (two cuts).
      while (count === 1 ? ab < 0 : ca >= 0) {
        [a, b, c] = [b, c, a];
        [p, q, r] = [q, r, p];
        [ab, bc, ca] = [bc, ca, ab];
      }
      if (count === 1) {
        put(next, a, ab, c, p, 0, r, s);
        put(next, ab, b, c, p, q, 0, s);
        continue;
      }
      put(next, ab, b, bc, p, q, 0, s);
      if (shorter(a, bc, ab, c)) {
        put(next, a, ab, bc, p, 0, 0, s);
        put(next, a, bc, c, 0, q, r, s);
      } else {
        put(next, a, ab, c, p, 0, r, s);
        put(next, ab, bc, c, 0, q, 0, s);
      }
    }
    todo = next;
  }
  for (let t = 0; t < todo.source.length; t++) {
    const { corners: v, border: m } = todo;
    const i = 3 * t;
    put(done, v[i], v[i + 1], v[i + 2], m[i], m[i + 1], m[i + 2], todo.source[t]);
  }
  return {
    xyz: Float64Array.from(xyz),
    triangles: Uint32Array.from(done.corners),
    source: Uint32Array.from(done.source),
    border: Uint8Array.from(done.border),
  };
}

interface Pile {
  readonly corners: number[];
  readonly border: number[];
  readonly source: number[];
}

function newPile(): Pile {
  return { corners: [], border: [], source: [] };
}

function put(
  pile: Pile,
  a: number,
  b: number,
  c: number,
  p: number,
  q: number,
  r: number,
  source: number,
): void {
  pile.corners.push(a, b, c);
  pile.border.push(p, q, r);
  pile.source.push(source);
}
