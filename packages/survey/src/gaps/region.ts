import { groupOf, membersOf, newGroups, unite } from '../weld/groups.ts';
import { edgeValue, newEdgeTable, setEdgeValue, unknown } from './edge-table.ts';
import { type Eye, type gap, met, newSight } from './look.ts';
import { lookFrom, type Views } from './views.ts';
import { type WallMesh, wallEnd } from './wall-mesh.ts';

/** A straight piece of the border of a region, mm, in the frame of the model. */
export interface Segment {
  readonly a: readonly [number, number, number];
  readonly b: readonly [number, number, number];
  /** Unit direction along the wall, away from the region. */
  readonly outward: readonly [number, number, number];
  /** Outward normal of the wall. */
  readonly normal: readonly [number, number, number];
  /** A vertex of the region beside it. */
  readonly vertex: number;
}

/** A connected set of wall points that all see a gap, or all meet the same part. */
export interface Region {
  readonly mesh: WallMesh;
  readonly views: Views;
  readonly state: typeof gap | typeof met;
  /** The part that is met; -1 for a gap. */
  readonly partner: number;
  readonly vertices: readonly number[];
  readonly area_mm2: number;
  /** Of that, where surfaces touch. */
  readonly touching_mm2: number;
  readonly segments: readonly Segment[];
  /** The region cut out of the wall, xyz per corner. */
  readonly outlineTriangles: readonly number[];
}

/** Borders between what a point sees are found to this share of an edge: 2 ^ -halvings. */
const halvings = 10;

/** Regions of one kind on one wall mesh. */
export function regionsOf(eye: Eye, mesh: WallMesh, views: Views, state: typeof gap | typeof met): Region[] {
  const belongs = (v: number) => views.state[v] === state;
  const partnerOf = (v: number) => (state === met ? views.part[v] : -1);
  const groups = newGroups(views.state.length);
  const { triangles } = mesh;
  for (let h = 0; h < triangles.length; h++) {
    const a = triangles[h];
    const b = triangles[next(h)];
    if (belongs(a) && belongs(b) && partnerOf(a) === partnerOf(b)) unite(groups, a, b);
  }
  const building = new Map<number, Builder>();
  for (const vertices of membersOf(groups, belongs)) {
    building.set(vertices[0], {
      vertices,
      segments: [],
      area: 0,
      touching: 0,
      corners: [],
      partner: partnerOf(vertices[0]),
    });
  }
  const cut = borderFinder(eye, mesh, views, state);
  for (let t = 0; 3 * t < triangles.length; t++) {
    const [a, b, c] = [triangles[3 * t], triangles[3 * t + 1], triangles[3 * t + 2]];
    if (!belongs(a) && !belongs(b) && !belongs(c)) continue;
    const bordered = mesh.border[3 * t] + mesh.border[3 * t + 1] + mesh.border[3 * t + 2] > 0;
    if (belongs(a) && belongs(b) && belongs(c) && !bordered) {
      addWhole(building.get(groupOf(groups, a))!, mesh.xyz, views.touching, a, b, c);
    } else addTriangle(mesh, views, t, belongs, cut, (v) => building.get(groupOf(groups, v))!);
  }
  return [...building.values()].map((b) => ({
    mesh,
    views,
    state,
    partner: b.partner,
    vertices: b.vertices,
    area_mm2: b.area,
    touching_mm2: b.touching,
    segments: b.segments,
    outlineTriangles: b.corners,
  }));
}

interface Builder {
  readonly vertices: readonly number[];
  readonly segments: Segment[];
  readonly corners: number[];
  readonly partner: number;
  area: number;
  touching: number;
}

type Point = [number, number, number];

/** Adds a triangle that lies in the midst of a region: most do. */
function addWhole(
  builder: Builder,
  xyz: Float64Array,
  touching: Uint8Array,
  a: number,
  b: number,
  c: number,
): void {
  const [i, j, k] = [3 * a, 3 * b, 3 * c];
  const [ux, uy, uz] = [xyz[j] - xyz[i], xyz[j + 1] - xyz[i + 1], xyz[j + 2] - xyz[i + 2]];
  const [vx, vy, vz] = [xyz[k] - xyz[i], xyz[k + 1] - xyz[i + 1], xyz[k + 2] - xyz[i + 2]];
  const [nx, ny, nz] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const area = Math.sqrt(nx * nx + ny * ny + nz * nz) / 2;
  builder.area += area;
  if (touching[a] === 1 && touching[b] === 1 && touching[c] === 1) builder.touching += area;
  for (const v of [i, j, k]) builder.corners.push(xyz[v], xyz[v + 1], xyz[v + 2]);
}

/** Adds the part of a triangle that belongs to a region, and the borders that run through it or along its edges. */
function addTriangle(
  mesh: WallMesh,
  views: Views,
  t: number,
  belongs: (v: number) => boolean,
  cut: (inner: number, outer: number, t: number) => Point,
  builderOf: (v: number) => Builder,
): void {
  const corners = [0, 1, 2].map((k) => mesh.triangles[3 * t + k]);
  const within = corners.map(belongs);
  const vertex = corners[within.indexOf(true)];
  const builder = builderOf(vertex);
  const normal = normalOf(corners.map((v) => at(mesh, v)));
  const polygon: Point[] = [];
  const crossings: Point[] = [];
  for (let k = 0; k < 3; k++) {
    const [v, w] = [corners[k], corners[(k + 1) % 3]];
    const [vIn, wIn] = [within[k], within[(k + 1) % 3]];
    if (vIn) polygon.push(at(mesh, v));
    let edge: [Point, Point] | undefined = vIn && wIn ? [at(mesh, v), at(mesh, w)] : undefined;
    if (vIn !== wIn) {
      const x = cut(vIn ? v : w, vIn ? w : v, t);
      polygon.push(x);
      crossings.push(x);
      edge = vIn ? [at(mesh, v), x] : [x, at(mesh, w)];
    }
    // The wall lies to the left of its edges seen from the air, so what lies beyond is to the right.
    if (edge && mesh.border[3 * t + k] === wallEnd) addSegment(builder, edge, normal, vIn ? v : w);
  }
  // Walking round the triangle the polygon is left at the first crossing or entered there; its inner side tells.
  if (crossings.length === 2) {
    const leaving = within[0] !== within[1] ? within[0] : within[1];
    const ends: [Point, Point] = leaving ? [crossings[0], crossings[1]] : [crossings[1], crossings[0]];
    addSegment(builder, ends, normal, vertex);
  }
  let area = 0;
  for (let k = 2; k < polygon.length; k++) {
    const piece = [polygon[0], polygon[k - 1], polygon[k]];
    area += areaOf(piece);
    for (const p of piece) builder.corners.push(...p);
  }
  builder.area += area;
  if (corners.every((v, k) => !within[k] || views.touching[v] === 1)) builder.touching += area;
}

/** `ends` run counter-clockwise around the region. */
function addSegment({ segments }: Builder, [a, b]: [Point, Point], n: Point, vertex: number): void {
  const [ex, ey, ez] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
  const length = Math.hypot(ex, ey, ez);
  if (length < 1e-9) return;
  const outward: Point = [
    (ey * n[2] - ez * n[1]) / length,
    (ez * n[0] - ex * n[2]) / length,
    (ex * n[1] - ey * n[0]) / length,
  ];
  segments.push({ a, b, outward, normal: n, vertex });
}

/** Finds, once per edge, where along it the view changes. */
function borderFinder(
  eye: Eye,
  mesh: WallMesh,
  views: Views,
  state: number,
): (inner: number, outer: number, t: number) => Point {
  const table = newEdgeTable(256);
  const points: Point[] = [];
  const sight = newSight();
  const { normals, xyz } = mesh;
  const mix = (values: Float64Array, i: number, o: number, k: number, s: number) =>
    values[3 * i + k] + s * (values[3 * o + k] - values[3 * i + k]);
  return (inner, outer, t) => {
    const [lower, upper] = inner < outer ? [inner, outer] : [outer, inner];
    const old = edgeValue(table, lower, upper);
    if (old !== unknown) return points[old];
    let low = 0;
    let high = 1;
    for (let n = 0; n < halvings; n++) {
      const s = (low + high) / 2;
      const f = (k: number) => mix(views.from, inner, outer, k, s);
      const m = (k: number) => mix(normals, inner, outer, k, s);
      const l = Math.hypot(m(0), m(1), m(2)) || 1;
      lookFrom(eye, mesh, t, f(0), f(1), f(2), m(0) / l, m(1) / l, m(2) / l, sight);
      if (sight.state === state) low = s;
      else high = s;
    }
    const x: Point = [0, 1, 2].map((k) => mix(xyz, inner, outer, k, (low + high) / 2)) as Point;
    setEdgeValue(table, lower, upper, points.length);
    points.push(x);
    return x;
  };
}

function next(h: number): number {
  return h % 3 === 2 ? h - 2 : h + 1;
}

function at({ xyz }: WallMesh, v: number): Point {
  return [xyz[3 * v], xyz[3 * v + 1], xyz[3 * v + 2]];
}

function crossOf([a, b, c]: readonly Point[]): Point {
  const [ux, uy, uz] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
  const [vx, vy, vz] = [c[0] - a[0], c[1] - a[1], c[2] - a[2]];
  return [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
}

function normalOf(corners: readonly Point[]): Point {
  const n = crossOf(corners);
  const length = Math.hypot(...n) || 1;
  return [n[0] / length, n[1] / length, n[2] / length];
}

function areaOf(corners: readonly Point[]): number {
  return Math.hypot(...crossOf(corners)) / 2;
}
