import { type Bisection, bisect, isSmall, write } from './bisect.ts';
import { type Border, type Borders, halves, meet } from './borders.ts';

/** The surface of a part cut into small triangles, in the order of its own triangles. */
export interface Leaves {
  readonly count: number;
  /** Nine numbers each: xyz of the corners, mm. */
  readonly corners: Float64Array;
  /** xyz of the point where each is asked: spread, so that no pattern of the machine falls in step with the leaves. */
  readonly points: Float64Array;
  /** Number of the triangle that it is part of, within the part of the model. */
  readonly triangle: Uint32Array;
  /** Per triangle of the part: its first leaf; one more for the end. */
  readonly firstOf: Uint32Array;
  /** Where leaves touch. */
  readonly contacts: Contacts;
}

/**
 * Six numbers each: leaf times three plus edge, and the stretch along that edge from 0 to 1, of the one side and of the
 * other.
 */
export class Contacts {
  count = 0;
  numbers = new Float64Array(6 * 256);

  add(a: number, a0: number, a1: number, b: number, b0: number, b1: number): void {
    const at = this.count++ * 6;
    if (at === this.numbers.length) {
      const more = new Float64Array(at * 2);
      more.set(this.numbers);
      this.numbers = more;
    }
    const { numbers } = this;
    numbers[at] = a;
    numbers[at + 1] = a0;
    numbers[at + 2] = a1;
    numbers[at + 3] = b;
    numbers[at + 4] = b0;
    numbers[at + 5] = b1;
  }
}

/** The triangles of a part: nine coordinates each from `at(triangle)` on, and the half-edge across each edge, -1 for none. */
export interface Skin {
  readonly count: number;
  readonly corners: Float64Array;
  readonly at: (triangle: number) => number;
  readonly twin: Int32Array;
}

/** Cuts the triangles that `isWanted` into leaves of the size: see `bisect`. */
export function leavesOf(skin: Skin, isWanted: (triangle: number) => boolean, size_mm: number): Leaves {
  const { count: n, corners: from, twin } = skin;
  let corners = new Float64Array(9 * Math.max(16, n));
  let triangle = new Uint32Array(Math.max(16, n));
  let count = 0;
  let present = 0;
  const firstOf = new Uint32Array(n + 1);
  const contacts = new Contacts();
  const room = () => {
    if (count < triangle.length) return;
    const more = new Float64Array(corners.length * 2);
    more.set(corners);
    corners = more;
    const longer = new Uint32Array(triangle.length * 2);
    longer.set(triangle);
    triangle = longer;
  };
  const touch = (a: Border, b: Border) =>
    meet(a, b, (i, j, low, high) => {
      const [a0, a1, b0, b1] = [a[i], a[i + 1], b[j], b[j + 1]];
      contacts.add(
        a[i + 2],
        (low - a0) / (a1 - a0),
        (high - a0) / (a1 - a0),
        b[j + 2],
        (1 - high - b0) / (b1 - b0),
        (1 - low - b0) / (b1 - b0),
      );
    });
  const cutting: Bisection<Borders> = {
    size_mm,
    leaf: (p, q, r) => {
      room();
      write(corners, count * 9, p);
      write(corners, count * 9 + 3, q);
      write(corners, count * 9 + 6, r);
      triangle[count] = present;
      return edgesOf(count++);
    },
    join: (_p, _q, _r, longest, [am, mc, ca], [mb, bc, cm]) => {
      touch(mc, cm);
      const ab = halves(am, mb);
      return longest === 0 ? [ab, bc, ca] : longest === 1 ? [ca, ab, bc] : [bc, ca, ab];
    },
  };
  /** Of triangles in several leaves. */
  const borders = new Map<number, Borders>();
  for (let t = 0; t < n; t++) {
    firstOf[t] = count;
    if (!isWanted(t)) continue;
    present = t;
    const c = skin.at(t);
    if (isSmall(from, c, size_mm)) {
      room();
      for (let k = 0; k < 9; k++) corners[count * 9 + k] = from[c + k];
      triangle[count++] = t;
    } else {
      borders.set(t, bisect(from, c, cutting));
    }
  }
  firstOf[n] = count;
  const borderOf = (h: number): Border => {
    const t = (h / 3) | 0;
    return borders.get(t)?.[h % 3] ?? [0, 1, firstOf[t] * 3 + (h % 3)];
  };
  for (let h = 0; h < twin.length; h++) {
    const o = twin[h];
    const [t, u] = [(h / 3) | 0, (o / 3) | 0];
    if (o <= h || firstOf[t] === firstOf[t + 1] || firstOf[u] === firstOf[u + 1]) continue;
    if (borders.has(t) || borders.has(u)) touch(borderOf(h), borderOf(o));
    else contacts.add(firstOf[t] * 3 + (h % 3), 0, 1, firstOf[u] * 3 + (o % 3), 0, 1);
  }
  return { count, corners, points: pointsIn(corners, count), triangle, firstOf, contacts };
}

/**
 * Steps of the sequence R2, whose points lie evenly in the square (Roberts, The unreasonable effectiveness of
 * quasirandom sequences, 2018): powers of the inverse of the root of x^3 = x + 1.
 */
const stepU = 0.7548776662466927;
const stepV = 0.5698402909980532;

function pointsIn(c: Float64Array, count: number): Float64Array {
  const points = new Float64Array(count * 3);
  let u = 0.5;
  let v = 0.5;
  for (let i = 0; i < count; i++) {
    u = (u + stepU) % 1;
    v = (v + stepV) % 1;
    const isOver = u + v > 1;
    const p = isOver ? 1 - u : u;
    const q = isOver ? 1 - v : v;
    for (let k = 0; k < 3; k++) {
      const a = c[i * 9 + k];
      points[i * 3 + k] = a + (c[i * 9 + 3 + k] - a) * p + (c[i * 9 + 6 + k] - a) * q;
    }
  }
  return points;
}

function edgesOf(leaf: number): Borders {
  return [
    [0, 1, leaf * 3],
    [0, 1, leaf * 3 + 1],
    [0, 1, leaf * 3 + 2],
  ];
}
