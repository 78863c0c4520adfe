/** A kernel shape as triangles, faces and edges. */
import type { CadEdge, CadFace, CadTopology } from '@coveline/model';
import type { Poly_Triangulation, TopoDS_Edge, TopoDS_Shape } from 'replicad-opencascadejs';
import { Growing } from '../growing.ts';
import { fillHoles } from '../mesh/fillHoles.ts';
import { type Welded, weld } from '../mesh/weld.ts';
import { type EdgeUse, edgeLength, lookAlongEdge, turnAt } from './edges.ts';
import { describeFace } from './faces.ts';
import type { Kernel } from './kernel.ts';
import { withFaces } from './withFaces.ts';

export interface Tessellation {
  readonly positions: Float64Array;
  readonly triangles: Uint32Array;
  readonly cad: CadTopology;
  /** Faces that the kernel could not cover with triangles. */
  readonly bareFaces: number;
  /** What was closed with triangles of our own, in a shape that should be closed. */
  readonly filled: { readonly holes: number; readonly area_mm2: number; readonly widest_mm: number };
}

/** Vertices closer than this are one, mm; far under the 1e-4 mm that kernels keep, far over rounding noise. */
const weldCell_mm = 1e-5;

interface EdgeSlot {
  readonly edge: TopoDS_Edge;
  readonly uses: EdgeUse[];
  /** Vertex numbers before welding, along the edge. */
  nodes: Uint32Array;
}

/**
 * Reads a triangulated shape. Holes that the mesher left in a `solid` are closed. `finer`: deviation, by number, of
 * the faces that were asked to be finer than the shape as a whole, mm.
 */
export function tessellation(
  oc: Kernel,
  shape: TopoDS_Shape,
  solid: boolean,
  finer: ReadonlyMap<number, number> = new Map(),
): Tessellation {
  const coordinates = new Growing();
  const indices = new Growing();
  const faceOf = new Growing();
  const faces: CadFace[] = [];
  const slots = new EdgeTable(oc);
  let bareFaces = 0;

  const { TopAbs_EDGE, TopAbs_SHAPE } = oc.TopAbs_ShapeEnum;
  const location = new oc.TopLoc_Location();
  withFaces(oc, shape, (bodyFaces) => {
    for (const [number, face] of bodyFaces.entries()) {
      const mesh = oc.BRep_Tool.Triangulation(face, location, 0);
      const firstVertex = coordinates.length / 3;
      const reversed = face.Orientation() === 'TopAbs_REVERSED';
      const surface = new oc.BRepAdaptor_Surface(face, true);
      const outward = reversed ? -1 : 1;
      if (mesh) addTriangles(mesh, location, reversed, number, coordinates, indices, faceOf);
      else bareFaces++;
      const own = finer.get(number);
      const description = describeFace(surface, outward, extentFrom(coordinates, firstVertex));
      faces.push(own === undefined ? description : { ...description, deviation_mm: own });
      const along = new oc.TopExp_Explorer(face, TopAbs_EDGE, TopAbs_SHAPE);
      for (; along.More(); along.Next()) {
        const edge = oc.TopoDS.Edge(along.Current());
        if (oc.BRep_Tool.Degenerated(edge)) continue;
        const slot = slots.of(edge);
        slot.uses.push(lookAlongEdge(oc, edge, face, surface, number, outward));
        if (mesh && slot.nodes.length === 0) slot.nodes = edgeNodes(oc, edge, mesh, location, firstVertex);
      }
      along.delete();
      surface.delete();
      mesh?.delete();
    }
  });
  location.delete();

  const welded = weld(coordinates.floats(), indices.integers(), weldCell_mm);
  const faceOfOld = faceOf.integers();
  const faceOfTriangle = welded.kept.map((t) => faceOfOld[t]);
  const edges = slots.all.map((slot) => edgeFrom(oc, slot, welded.positions, welded.vertexOf));
  const closed = solid ? closeHoles(welded, faceOfTriangle, slots.all) : undefined;
  slots.dispose();
  return {
    positions: welded.positions,
    triangles: closed?.triangles ?? welded.triangles,
    cad: { faceOfTriangle: closed?.faceOfTriangle ?? faceOfTriangle, faces, edges },
    bareFaces,
    filled: closed?.filled ?? { holes: 0, area_mm2: 0, widest_mm: 0 },
  };
}

/** The mesh with its holes filled; the new triangles belong to the face whose edges run around the hole. */
function closeHoles(
  mesh: Welded,
  faceOfTriangle: Uint32Array,
  slots: readonly EdgeSlot[],
): Pick<Tessellation, 'triangles' | 'filled'> & { faceOfTriangle: Uint32Array } {
  const filling = fillHoles(mesh.positions, mesh.triangles);
  const n = mesh.positions.length / 3;
  const key = (a: number, b: number) => Math.min(a, b) * n + Math.max(a, b);
  const facesAt = new Map<number, number[]>();
  if (filling.rims.length > 0) {
    for (const { nodes, uses } of slots) {
      for (let i = 1; i < nodes.length; i++) {
        const at = key(mesh.vertexOf[nodes[i - 1]], mesh.vertexOf[nodes[i]]);
        facesAt.set(at, [...(facesAt.get(at) ?? []), ...uses.map((use) => use.face)]);
      }
    }
  }
  const faceOfHole = filling.rims.map((rim) => {
    const votes = new Map<number, number>();
    for (const [i, vertex] of rim.entries()) {
      for (const face of new Set(facesAt.get(key(vertex, rim[(i + 1) % rim.length])) ?? [])) {
        votes.set(face, (votes.get(face) ?? 0) + 1);
      }
    }
    const [winner] = [...votes].sort((a, b) => b[1] - a[1] || a[0] - b[0]);
    return winner ? winner[0] : faceOfTriangle[(mesh.triangles.indexOf(rim[0]) / 3) | 0];
  });
  const triangles = new Uint32Array(mesh.triangles.length + filling.triangles.length);
  triangles.set(mesh.triangles);
  triangles.set(filling.triangles, mesh.triangles.length);
  const faces = new Uint32Array(triangles.length / 3);
  faces.set(faceOfTriangle);
  faces.set(
    filling.holeOfTriangle.map((hole) => faceOfHole[hole]),
    faceOfTriangle.length,
  );
  const widest_mm = Math.max(0, ...filling.rims.map((rim) => rimWidth(rim, mesh.positions)));
  return {
    triangles,
    faceOfTriangle: faces,
    filled: { holes: filling.rims.length, area_mm2: filling.area, widest_mm },
  };
}

/** Diagonal of the box around a rim. */
function rimWidth(rim: readonly number[], positions: Float64Array): number {
  const span = [0, 1, 2].map((k) => {
    const values = rim.map((v) => positions[v * 3 + k]);
    return Math.max(...values) - Math.min(...values);
  });
  return Math.hypot(span[0], span[1], span[2]);
}

function addTriangles(
  mesh: Poly_Triangulation,
  location: InstanceType<Kernel['TopLoc_Location']>,
  reversed: boolean,
  face: number,
  coordinates: Growing,
  indices: Growing,
  faceOf: Growing,
): void {
  const firstVertex = coordinates.length / 3;
  const move = location.IsIdentity() ? undefined : location.Transformation();
  const n = mesh.NbNodes();
  for (let i = 1; i <= n; i++) {
    const p = mesh.Node(i);
    if (move) p.Transform(move);
    coordinates.push(p.X());
    coordinates.push(p.Y());
    coordinates.push(p.Z());
    p.delete();
  }
  move?.delete();
  const count = mesh.NbTriangles();
  for (let i = 1; i <= count; i++) {
    const t = mesh.Triangle(i);
    indices.push(firstVertex + t.Value(1) - 1);
    indices.push(firstVertex + t.Value(reversed ? 3 : 2) - 1);
    indices.push(firstVertex + t.Value(reversed ? 2 : 3) - 1);
    faceOf.push(face);
    t.delete();
  }
}

function edgeNodes(
  oc: Kernel,
  edge: TopoDS_Edge,
  mesh: Poly_Triangulation,
  location: InstanceType<Kernel['TopLoc_Location']>,
  firstVertex: number,
): Uint32Array {
  const polygon = oc.BRep_Tool.PolygonOnTriangulation(edge, mesh, location);
  if (!polygon) return new Uint32Array(0);
  const nodes = new Uint32Array(polygon.NbNodes());
  for (let i = 0; i < nodes.length; i++) nodes[i] = firstVertex + polygon.Node(i + 1) - 1;
  polygon.delete();
  return nodes;
}

function edgeFrom(oc: Kernel, slot: EdgeSlot, positions: Float64Array, vertexOf: Uint32Array): CadEdge {
  const points = new Float64Array(slot.nodes.length * 3);
  for (let i = 0; i < slot.nodes.length; i++) {
    const v = vertexOf[slot.nodes[i]] * 3;
    points[i * 3] = positions[v];
    points[i * 3 + 1] = positions[v + 1];
    points[i * 3 + 2] = positions[v + 2];
  }
  const [one, two] = slot.uses;
  return {
    faces: [one.face, two ? two.face : -1],
    ...turnAt(one, two),
    length_mm: edgeLength(oc, slot.edge),
    points,
  };
}

/** Diagonal of the box around the vertices from the given one on. */
function extentFrom(coordinates: Growing, firstVertex: number): number {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (let i = firstVertex * 3; i < coordinates.length; i++) {
    const x = coordinates.at(i);
    const axis = i % 3;
    if (x < low[axis]) low[axis] = x;
    if (x > high[axis]) high[axis] = x;
  }
  return low[0] > high[0] ? 0 : Math.hypot(high[0] - low[0], high[1] - low[1], high[2] - low[2]);
}

class EdgeTable {
  readonly all: EdgeSlot[] = [];
  readonly #buckets = new Map<number, EdgeSlot[]>();
  readonly #oc: Kernel;

  constructor(oc: Kernel) {
    this.#oc = oc;
  }

  of(edge: TopoDS_Edge): EdgeSlot {
    const key = this.#oc.ReplicadShapeHasher.HashCode(edge, 2_147_483_647);
    const bucket = this.#buckets.get(key) ?? [];
    const found = bucket.find((slot) => slot.edge.IsSame(edge));
    if (found) return found;
    const slot: EdgeSlot = { edge, uses: [], nodes: new Uint32Array(0) };
    bucket.push(slot);
    this.#buckets.set(key, bucket);
    this.all.push(slot);
    return slot;
  }

  dispose(): void {
    for (const { edge } of this.all) edge.delete();
  }
}
