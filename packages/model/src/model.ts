/**
 * The geometric model that every measure, picture and view works on.
 *
 * Frame: millimetres, right-handed, as in the file that was read, until `orient` has turned it so that
 * +Z points up. Triangles are wound counter-clockwise when seen from the air, so normals point out of the
 * material.
 *
 * A shape is stored once and placed as often as the machine repeats it: a bolt used forty times is one shape
 * and forty parts. Placements are proper rigid motions; readers bake scaling and mirroring into a new shape.
 */

export type Vec3 = readonly [number, number, number];

export type FaceKind = 'plane' | 'cylinder' | 'cone' | 'sphere' | 'torus' | 'freeform';

/** One face of the CAD model, in the frame of its shape. */
export interface CadFace {
  readonly kind: FaceKind;
  /** Cylinder and sphere: radius. Torus: radius of the tube. Freeform: only where it is a cylinder in disguise. */
  readonly radius_mm?: number;
  /** Torus: radius of the circle that the tube follows. */
  readonly majorRadius_mm?: number;
  /** Cylinder, cone, torus: axis. Plane: outward normal as direction. */
  readonly axis?: { readonly origin: Vec3; readonly direction: Vec3 };
  /** Curved faces: true when the air lies on the side of the centre (a bore, an inside fillet). */
  readonly hollow?: boolean;
  /** Where its triangles keep closer to it than `deviation_mm` of the model says, the distance that they keep, mm. */
  readonly deviation_mm?: number;
}

/** How the material turns at an edge. `open` has one face only, `tangent` turns by less than about one degree. */
export type EdgeTurn = 'concave' | 'convex' | 'tangent' | 'open';

/** One edge of the CAD model, in the frame of its shape. */
export interface CadEdge {
  /** Indices into `faces`; the same index twice for a seam; the second is -1 for an open edge. */
  readonly faces: readonly [number, number];
  readonly turn: EdgeTurn;
  /** Angle through the air between the two faces at mid edge, degrees: 90 in a box's inside corner, 270 outside. */
  readonly airAngle_deg: number;
  readonly length_mm: number;
  /** xyz per point along the edge, mm. */
  readonly points: Float64Array;
}

export interface CadTopology {
  /** Per triangle of the shape: index into `faces`. */
  readonly faceOfTriangle: Uint32Array;
  readonly faces: readonly CadFace[];
  readonly edges: readonly CadEdge[];
}

export interface Shape {
  /** xyz per vertex, mm, in the frame of the shape. Vertices are shared between the triangles that meet there. */
  readonly positions: Float64Array;
  /** Three vertex indices per triangle. */
  readonly triangles: Uint32Array;
  /** Absent for files that carry triangles only. */
  readonly cad?: CadTopology;
  /** SHA-256 or another content hash, hex: equal shapes have equal hashes in every revision. */
  readonly hash: string;
}

/** Column-major 4x4 rigid motion, shape frame to model frame, mm. */
export type Placement = Float64Array;

export interface Part {
  /** Stable and unique in the model: names from root to body, joined by "/", with "#n" for the n-th namesake. */
  readonly id: string;
  readonly name: string;
  /** Names of the assemblies above it, from the root. */
  readonly assembly: readonly string[];
  /** Index into `shapes`. */
  readonly shape: number;
  readonly placement: Placement;
  /** sRGB, 0 to 1. */
  readonly color?: Vec3;
}

export type LengthUnit = 'mm' | 'cm' | 'm' | 'in';

/** Something the reader noticed: what, where, and what it did about it. One sentence. */
export interface ModelNote {
  readonly level: 'info' | 'warning';
  readonly text: string;
  readonly part?: string;
}

export interface Model {
  readonly shapes: readonly Shape[];
  readonly parts: readonly Part[];
  /** Unit that the file was written in; the model itself is in millimetres. */
  readonly unit: LengthUnit;
  /** Largest distance between a curved face and its triangles, mm; 0 where the file carries triangles only. */
  readonly deviation_mm: number;
  readonly notes: readonly ModelNote[];
}
