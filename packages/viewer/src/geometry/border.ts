/**
 * Edges belong to a family when their end strays less than this from its direction, mm. The diagonals of long thin
 * strips stray by the width of the strip, however small their angle.
 */
const stray_mm = 0.01;
/** Lines of a family closer to each other than this are one line, mm. Drawings are rounded to 0.001 mm. */
const sameLine_mm = 0.02;
const leastLength_mm = 0.01;
/** Patches are made of strips, so a few directions hold nearly all edges that meet in the middle of another. */
const families = 3;
/** Edges that vote for the direction of a family. */
const voteOf = 120;

type Point = readonly [number, number, number];
interface Edge {
  readonly a: Point;
  readonly b: Point;
  readonly along: Point;
  readonly length: number;
}

/**
 * Border of a patch of free triangles, two points per segment, xyz each: the stretches that an odd number of edges
 * cover. Edges need not share their ends: strips of different length lie side by side in a patch.
 */
export function border(triangles: ArrayLike<number>): Float32Array {
  let rest = edgesOf(triangles);
  const out: number[] = [];
  for (let family = 0; family < families && rest.length > 0; family++) {
    const along = commonDirection(rest);
    for (const line of lines(
      rest.filter((e) => isAlong(e, along)),
      along,
    ))
      odd(line, along, out);
    rest = rest.filter((e) => !isAlong(e, along));
  }
  alone(rest, out);
  return new Float32Array(out);
}

/**
 * The direction that most of the length follows, voted by a sample of the longer edges: rounding turns short ones
 * by more than the strips of a patch can bear.
 */
function commonDirection(edges: readonly Edge[]): Point {
  const longer = [...edges].sort((p, q) => q.length - p.length).slice(0, Math.ceil(edges.length / 2));
  const voters = longer.filter((_, i) => i % Math.ceil(longer.length / voteOf) === 0);
  let best = edges[0].along;
  let most = 0;
  for (const { along } of voters) {
    const length = voters.reduce((sum, e) => sum + (isAlong(e, along) ? e.length : 0), 0);
    if (length <= most) continue;
    most = length;
    best = along;
  }
  return best;
}

function isAlong({ along, length }: Edge, d: Point): boolean {
  const x = along[1] * d[2] - along[2] * d[1];
  const y = along[2] * d[0] - along[0] * d[2];
  const z = along[0] * d[1] - along[1] * d[0];
  return (x * x + y * y + z * z) * length * length < stray_mm * stray_mm;
}

function edgesOf(t: ArrayLike<number>): Edge[] {
  const edges: Edge[] = [];
  for (let i = 0; i + 8 < t.length; i += 9) {
    for (let k = 0; k < 3; k++) {
      const at = i + k * 3;
      const to = i + ((k + 1) % 3) * 3;
      const a: Point = [t[at], t[at + 1], t[at + 2]];
      const b: Point = [t[to], t[to + 1], t[to + 2]];
      const length = Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]);
      if (length < leastLength_mm) continue;
      edges.push({
        a,
        b,
        length,
        along: [(b[0] - a[0]) / length, (b[1] - a[1]) / length, (b[2] - a[2]) / length],
      });
    }
  }
  return edges;
}

/** The edges of a family, by the line that they lie on. */
function lines(edges: readonly Edge[], d: Point): Edge[][] {
  const least = d.map(Math.abs).indexOf(Math.min(...d.map(Math.abs)));
  const axis: Point = [Number(least === 0), Number(least === 1), Number(least === 2)];
  const n = unit(cross(d, axis));
  const o = cross(d, n);
  return clusters(edges, n).flatMap((sheet) => clusters(sheet, o));
}

/** Groups of edges whose middles lie at the same distance along `n`. */
function clusters(edges: readonly Edge[], n: Point): Edge[][] {
  const at = (e: Edge) => (dot(e.a, n) + dot(e.b, n)) / 2;
  const sorted = [...edges].sort((p, q) => at(p) - at(q));
  const out: Edge[][] = [];
  sorted.forEach((edge, i) => {
    if (i > 0 && at(edge) - at(sorted[i - 1]) < sameLine_mm) out[out.length - 1].push(edge);
    else out.push([edge]);
  });
  return out;
}

/** Writes the stretches of a line that an odd number of its edges cover. */
function odd(line: readonly Edge[], d: Point, out: number[]): void {
  const base = line[0].a;
  const zero = dot(base, d);
  const ends = line.flatMap((e) => [dot(e.a, d) - zero, dot(e.b, d) - zero]).sort((p, q) => p - q);
  for (let i = 0; i + 1 < ends.length; i += 2) {
    const from = ends[i];
    const to = ends[i + 1];
    if (to - from < leastLength_mm) continue;
    for (const t of [from, to]) out.push(base[0] + d[0] * t, base[1] + d[1] * t, base[2] + d[2] * t);
  }
}

/** Writes the edges of any direction that have no twin with the same ends. */
function alone(edges: readonly Edge[], out: number[]): void {
  const key = (p: Point) => p.map((c) => Math.round(c / leastLength_mm)).join(' ');
  const once = new Map<string, Edge>();
  for (const edge of edges) {
    const both = [key(edge.a), key(edge.b)].sort().join(' ');
    if (!once.delete(both)) once.set(both, edge);
  }
  for (const { a, b } of once.values()) out.push(...a, ...b);
}

const dot = (a: Point, b: Point) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Point, b: Point): Point => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
function unit(a: Point): Point {
  const length = Math.hypot(...a);
  return [a[0] / length, a[1] / length, a[2] / length];
}
