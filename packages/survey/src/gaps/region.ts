import { membersOf, newGroups, unite } from '../weld/groups.ts';
import { edgeValue, newEdgeTable, setEdgeValue, unknown } from './edge-table.ts';
import { type Eye, gap, look, met, newSight } from './look.ts';
import type { Views } from './views.ts';
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
  /** Distance across the air, on the region's side. */
  readonly width: number;
  /** Beyond it a gap is seen. */
  readonly besideGap: boolean;
}

/** A connected set of wall points that all see a gap, or all meet the same part. */
export interface Region {
  readonly mesh: WallMesh;
  readonly views: Views;
  readonly state: typeof gap | typeof met;
  /** The part that is met; -1 for a gap. */
  readonly partner: number;
  readonly vertices: readonly number[];
  /** Per vertex of the mesh: the lowest vertex of its region, -1 for none. */
  readonly owner: Int32Array;
  readonly area_mm2: number;
  /** Distances across at its vertices and just inside its border. */
  readonly width_mm: number;
  readonly widest_mm: number;
  readonly segments: readonly Segment[];
  /** The region cut out of the wall, xyz per corner. */
  readonly outlineTriangles: readonly number[];
}

/** Borders between what a point sees and what it does not are found to this, mm, or to so many halvings of an edge. */
const fine_mm = 0.01;
const mostHalvings = 12;

/** Long edges of a wall are asked in pieces of about the given length what lies beyond them, in so many at most. */
const mostPieces = 64;
/** Triangles between two looks at the signal. */
const trianglesAtOnce = 4096;

/** Regions of one kind on one wall mesh. */
export function regionsOf(
  eye: Eye,
  mesh: WallMesh,
  views: Views,
  state: typeof gap | typeof met,
  edge_mm: number,
  step: () => void,
): Region[] {
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
  const owner = new Int32Array(views.state.length).fill(-1);
  for (const vertices of membersOf(groups, belongs)) {
    let width = Infinity;
    let widest = Number.NEGATIVE_INFINITY;
    for (const v of vertices) {
      owner[v] = vertices[0];
      width = Math.min(width, views.width_mm[v]);
      widest = Math.max(widest, views.width_mm[v]);
    }
    const partner = partnerOf(vertices[0]);
    building.set(vertices[0], {
      vertices,
      segments: [],
      area: 0,
      width,
      widest,
      corners: [],
      partner,
      edge_mm,
    });
  }
  const cut = borderFinder(eye, mesh, views, state, (v, width) => {
    const builder = building.get(owner[v])!;
    builder.width = Math.min(builder.width, width);
    builder.widest = Math.max(builder.widest, width);
  });
  for (let t = 0; 3 * t < triangles.length; t++) {
    if (t % trianglesAtOnce === 0) step();
    const [a, b, c] = [owner[triangles[3 * t]], owner[triangles[3 * t + 1]], owner[triangles[3 * t + 2]]];
    if (a < 0 && b < 0 && c < 0) continue;
    const bordered = mesh.border[3 * t] + mesh.border[3 * t + 1] + mesh.border[3 * t + 2] > 0;
    if (a >= 0 && a === b && a === c && !bordered) addWhole(building.get(a)!, mesh, t);
    else addTriangle(mesh, views, t, owner, cut, (v) => building.get(owner[v])!);
  }
  return [...building.values()].map((b) => ({
    mesh,
    views,
    state,
    partner: b.partner,
    vertices: b.vertices,
    owner,
    area_mm2: b.area,
    width_mm: b.width,
    widest_mm: b.widest,
    segments: b.segments,
    outlineTriangles: b.corners,
  }));
}

interface Builder {
  readonly vertices: readonly number[];
  readonly segments: Segment[];
  readonly corners: number[];
  readonly partner: number;
  readonly edge_mm: number;
  area: number;
  width: number;
  widest: number;
}

type Point = [number, number, number];

/** A place on an edge of the mesh where the view changes, and the distance across just inside. */
interface Cut {
  readonly at: Point;
  readonly width: number;
}

/** Adds a triangle that lies in the midst of a region: most do. */
function addWhole(builder: Builder, { triangles, xyz }: WallMesh, t: number): void {
  const [a, b, c] = [triangles[3 * t], triangles[3 * t + 1], triangles[3 * t + 2]];
  const [i, j, k] = [3 * a, 3 * b, 3 * c];
  const [ux, uy, uz] = [xyz[j] - xyz[i], xyz[j + 1] - xyz[i + 1], xyz[j + 2] - xyz[i + 2]];
  const [vx, vy, vz] = [xyz[k] - xyz[i], xyz[k + 1] - xyz[i + 1], xyz[k + 2] - xyz[i + 2]];
  const [nx, ny, nz] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const area = Math.sqrt(nx * nx + ny * ny + nz * nz) / 2;
  builder.area += area;
  for (const v of [i, j, k]) builder.corners.push(xyz[v], xyz[v + 1], xyz[v + 2]);
}

/** Adds the part of a triangle that belongs to a region, and the borders that run through it or along its edges. */
function addTriangle(
  mesh: WallMesh,
  views: Views,
  t: number,
  owner: Int32Array,
  cut: (inner: number, outer: number, t: number) => Cut,
  builderOf: (v: number) => Builder,
): void {
  const corners = [0, 1, 2].map((k) => mesh.triangles[3 * t + k]);
  // Neighbours of one region that see different parts are of two: the first has the triangle.
  const first = corners.find((v) => owner[v] >= 0)!;
  const within = corners.map((v) => owner[v] === owner[first]);
  const vertex = first;
  const builder = builderOf(vertex);
  const normal = normalOf(corners.map((v) => at(mesh, v)));
  const polygon: Point[] = [];
  const cuts: Cut[] = [];
  for (let k = 0; k < 3; k++) {
    const [v, w] = [corners[k], corners[(k + 1) % 3]];
    const [vIn, wIn] = [within[k], within[(k + 1) % 3]];
    if (vIn) polygon.push(at(mesh, v));
    let edge: [Point, Point] | undefined = vIn && wIn ? [at(mesh, v), at(mesh, w)] : undefined;
    let width = vIn ? views.width_mm[v] : views.width_mm[w];
    if (vIn !== wIn) {
      const x = cut(vIn ? v : w, vIn ? w : v, t);
      polygon.push(x.at);
      cuts.push(x);
      width = Math.min(width, x.width);
      edge = vIn ? [at(mesh, v), x.at] : [x.at, at(mesh, w)];
    }
    // The wall lies to the left of its edges seen from the air, so what lies beyond is to the right.
    if (edge && mesh.border[3 * t + k] === wallEnd)
      addSegment(builder, edge, normal, vIn ? v : w, width, false);
  }
  // Walking round the triangle the polygon is left at the first crossing or entered there; its inner side tells.
  if (cuts.length === 2) {
    const leaving = within[0] !== within[1] ? within[0] : within[1];
    const [first, last] = leaving ? cuts : [cuts[1], cuts[0]];
    // The vertex beside it is the nearest one: on long triangles the other is far away.
    const beside = corners.filter((_, k) => within[k]);
    const nearest = beside.length === 1 ? vertex : nearestOf(mesh, beside, first.at, last.at);
    const besideGap = corners.some((v, k) => !within[k] && views.state[v] === gap);
    addSegment(builder, [first.at, last.at], normal, nearest, (first.width + last.width) / 2, besideGap);
  }
  let area = 0;
  for (let k = 2; k < polygon.length; k++) {
    const piece = [polygon[0], polygon[k - 1], polygon[k]];
    area += areaOf(piece);
    for (const p of piece) builder.corners.push(...p);
  }
  builder.area += area;
}

/** Of some vertices the one that is nearest to the middle between two points. */
function nearestOf({ xyz }: WallMesh, vertices: readonly number[], a: Point, b: Point): number {
  const off = (v: number) =>
    Math.hypot(
      xyz[3 * v] - (a[0] + b[0]) / 2,
      xyz[3 * v + 1] - (a[1] + b[1]) / 2,
      xyz[3 * v + 2] - (a[2] + b[2]) / 2,
    );
  return vertices.reduce((best, v) => (off(v) < off(best) ? v : best));
}

/** `ends` run counter-clockwise around the region. */
function addSegment(
  { segments, edge_mm }: Builder,
  [a, b]: [Point, Point],
  n: Point,
  vertex: number,
  width: number,
  besideGap: boolean,
): void {
  const [ex, ey, ez] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
  const length = Math.hypot(ex, ey, ez);
  if (length < 1e-9) return;
  const outward: Point = [
    (ey * n[2] - ez * n[1]) / length,
    (ez * n[0] - ex * n[2]) / length,
    (ex * n[1] - ey * n[0]) / length,
  ];
  const pieces = Math.min(mostPieces, Math.ceil(length / edge_mm));
  const at = (i: number): Point => {
    const s = i / pieces;
    return i === pieces ? b : [a[0] + s * ex, a[1] + s * ey, a[2] + s * ez];
  };
  for (let i = 0; i < pieces; i++)
    segments.push({ a: at(i), b: at(i + 1), outward, normal: n, vertex, width, besideGap });
}

/** Finds, once per edge, where along it the view changes, and notes the width seen last. */
function borderFinder(
  eye: Eye,
  mesh: WallMesh,
  views: Views,
  state: number,
  note: (inner: number, width: number) => void,
): (inner: number, outer: number, t: number) => Cut {
  const table = newEdgeTable(256);
  const cuts: Cut[] = [];
  const sight = newSight();
  const { normals, xyz } = mesh;
  const mix = (values: Float64Array, i: number, o: number, k: number, s: number) =>
    values[3 * i + k] + s * (values[3 * o + k] - values[3 * i + k]);
  return (inner, outer, t) => {
    const [lower, upper] = inner < outer ? [inner, outer] : [outer, inner];
    const old = edgeValue(table, lower, upper);
    if (old !== unknown) return cuts[old];
    let low = 0;
    let high = 1;
    let width = views.width_mm[inner];
    const length = Math.hypot(
      xyz[3 * inner] - xyz[3 * outer],
      xyz[3 * inner + 1] - xyz[3 * outer + 1],
      xyz[3 * inner + 2] - xyz[3 * outer + 2],
    );
    const halvings = Math.min(mostHalvings, Math.ceil(Math.log2(length / fine_mm)));
    for (let n = 0; n < halvings; n++) {
      const s = (low + high) / 2;
      const f = (k: number) => mix(views.from, inner, outer, k, s);
      const m = (k: number) => mix(normals, inner, outer, k, s);
      const l = Math.hypot(m(0), m(1), m(2)) || 1;
      look(eye, mesh.part, mesh.source[t], f(0), f(1), f(2), m(0) / l, m(1) / l, m(2) / l, sight);
      if (sight.state === state) {
        low = s;
        width = sight.width_mm;
      } else high = s;
    }
    note(inner, width);
    const x = (k: number) => mix(xyz, inner, outer, k, (low + high) / 2);
    setEdgeValue(table, lower, upper, cuts.length);
    const found: Cut = { at: [x(0), x(1), x(2)], width };
    cuts.push(found);
    return found;
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
