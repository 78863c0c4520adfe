/** How the material turns at each edge of a body, by own arithmetic on the normals of the two faces at mid edge. */
import type { EdgeTurn, Vec3 } from '@coveline/model';
import type { BRepAdaptor_Surface, TopoDS_Edge, TopoDS_Face } from 'replicad-opencascadejs';
import { cross, dot, length, scaled, unit } from '../vector.ts';
import { take } from './faces.ts';
import type { Kernel } from './kernel.ts';

/** One face's view of an edge. */
export interface EdgeUse {
  readonly face: number;
  /** Outward normal of the face at mid edge; undefined where the surface has none there. */
  readonly normal?: Vec3;
  /** Direction of the edge there, the face on its left when seen from the air. */
  readonly tangent?: Vec3;
}

/** Under this turn an edge counts as tangent, degrees. */
const tangent_deg = 1;

/** Normal and direction at the middle of an edge, as the face sees it. */
export function lookAlongEdge(
  oc: Kernel,
  edge: TopoDS_Edge,
  face: TopoDS_Face,
  surface: BRepAdaptor_Surface,
  faceIndex: number,
  outward: number,
): EdgeUse {
  const curve = new oc.BRepAdaptor_Curve2d(edge, face);
  const t0 = curve.FirstParameter();
  const t1 = curve.LastParameter();
  const backwards = edge.Orientation() === 'TopAbs_REVERSED' ? -1 : 1;
  let use: EdgeUse = { face: faceIndex };
  // The middle, or beside it where the surface has no normal there (the tip of a cone).
  for (const part of [0.5, 0.45, 0.6]) {
    const on = curve.EvalD1(t0 + part * (t1 - t0));
    const u = on.Point.X();
    const v = on.Point.Y();
    const un = on.D1.X();
    const vn = on.D1.Y();
    on.Point.delete();
    on.D1.delete();
    const at = surface.EvalD1(u, v);
    at.Point.delete();
    const du = take(at.D1U);
    const dv = take(at.D1V);
    const normal = unit(cross(du, dv));
    const along = unit([du[0] * un + dv[0] * vn, du[1] * un + dv[1] * vn, du[2] * un + dv[2] * vn]);
    if (normal && along) {
      use = { face: faceIndex, normal: scaled(normal, outward), tangent: scaled(along, backwards) };
      break;
    }
  }
  curve.delete();
  return use;
}

/** Turn of the material, and angle through the air, between the two faces of an edge. */
export function turnAt(one: EdgeUse, two: EdgeUse | undefined): { turn: EdgeTurn; airAngle_deg: number } {
  if (!two) return { turn: 'open', airAngle_deg: 360 };
  if (!one.normal || !two.normal || !one.tangent) return { turn: 'tangent', airAngle_deg: 180 };
  const bend = Math.atan2(length(cross(one.normal, two.normal)), dot(one.normal, two.normal));
  const degrees = (bend * 180) / Math.PI;
  // n × t points from the edge into face one; a normal of face two that leans there makes an inside corner.
  const inside = dot(cross(one.normal, one.tangent), two.normal) > 0;
  const airAngle_deg = inside ? 180 - degrees : 180 + degrees;
  if (degrees < tangent_deg) return { turn: 'tangent', airAngle_deg };
  return { turn: inside ? 'concave' : 'convex', airAngle_deg };
}

/** Length of an edge, mm, integrated by the kernel along the curve (a polyline would be too short by up to 0.5 %). */
export function edgeLength(oc: Kernel, edge: TopoDS_Edge): number {
  const properties = new oc.GProp_GProps();
  oc.BRepGProp.LinearProperties(edge, properties, false, false);
  const mass = properties.Mass();
  properties.delete();
  return mass;
}
