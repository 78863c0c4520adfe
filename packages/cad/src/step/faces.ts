/** Kind, size and side of a face, from the kernel's surface. */
import type { CadFace, Vec3 } from '@coveline/model';
import type { BRepAdaptor_Surface, Geom_Surface_ResD2, gp_Pnt, gp_Vec } from 'replicad-opencascadejs';
import { cross, dot, length, minus, scaled, unit } from '../vector.ts';

/** Local shape of a surface: outward normal and principal curvatures, 1/mm, positive where it bends to the air. */
interface Bend {
  readonly point: Vec3;
  readonly normal: Vec3;
  readonly strong: number;
  readonly weak: number;
}

/** Sagitta over the face under which a freeform surface counts as flat, mm: a hundredth of common drawing accuracy. */
const flat_mm = 1e-4;
/** A freeform face is a cylinder where its radius varies by less than this and the other curvature is this small. */
const cylinderSpread = 0.01;

/**
 * `surface`: adaptor limited to the face. `outward`: 1 where du × dv points to the air, -1 where it points into the
 * material. `size_mm`: about the extent of the face.
 */
export function describeFace(surface: BRepAdaptor_Surface, outward: number, size_mm: number): CadFace {
  const bends = sampleBends(surface, outward);
  const side = hollowSide(bends);
  switch (surface.GetType()) {
    case 'GeomAbs_Plane':
      return planeFrom(bends) ?? { kind: 'plane' };
    case 'GeomAbs_Cylinder': {
      const cylinder = surface.Cylinder();
      const radius_mm = cylinder.Radius();
      cylinder.delete();
      return { kind: 'cylinder', radius_mm, ...axisOf(surface), ...side };
    }
    case 'GeomAbs_Cone':
      return { kind: 'cone', ...axisOf(surface), ...side };
    case 'GeomAbs_Sphere': {
      const sphere = surface.Sphere();
      const radius_mm = sphere.Radius();
      sphere.delete();
      return { kind: 'sphere', radius_mm, ...side };
    }
    case 'GeomAbs_Torus':
      return { kind: 'torus', ...torusRadii(surface), ...axisOf(surface, [0]), ...side };
    default:
      return freeform(bends, side, size_mm);
  }
}

function freeform(bends: readonly Bend[], side: Pick<CadFace, 'hollow'>, size_mm: number): CadFace {
  if (bends.length < 4) return { kind: 'freeform', ...side };
  const strongest = Math.max(...bends.map((b) => Math.abs(b.strong)));
  if ((strongest * size_mm * size_mm) / 8 < flat_mm) return planeFrom(bends) ?? { kind: 'freeform' };
  const weakest = Math.max(...bends.map((b) => Math.abs(b.weak)));
  const least = Math.min(...bends.map((b) => b.strong));
  const most = Math.max(...bends.map((b) => b.strong));
  const middle = (least + most) / 2;
  const isCylinder =
    most - least < cylinderSpread * Math.abs(middle) && weakest < cylinderSpread * Math.abs(middle);
  return { kind: 'freeform', ...(isCylinder ? { radius_mm: 1 / Math.abs(middle) } : {}), ...side };
}

function planeFrom(bends: readonly Bend[]): CadFace | undefined {
  const at = bends[bends.length >> 1];
  return at && { kind: 'plane', axis: { origin: at.point, direction: at.normal } };
}

/** Hollow where the stronger curvature bends to the air everywhere that was looked at; silent where it changes. */
function hollowSide(bends: readonly Bend[]): Pick<CadFace, 'hollow'> {
  const hollow = bends.filter((b) => b.strong > 1e-12).length;
  const round = bends.filter((b) => b.strong < -1e-12).length;
  return hollow > 0 && round === 0 ? { hollow: true } : round > 0 && hollow === 0 ? { hollow: false } : {};
}

/** Curvatures on a grid inside the limits of the face; places where the surface has no normal are left out. */
function sampleBends(surface: BRepAdaptor_Surface, outward: number): Bend[] {
  const bends: Bend[] = [];
  const u0 = surface.FirstUParameter();
  const u1 = surface.LastUParameter();
  const v0 = surface.FirstVParameter();
  const v1 = surface.LastVParameter();
  if (![u0, u1, v0, v1].every((x) => Math.abs(x) < 1e50)) return bends;
  const steps = surface.GetType() === 'GeomAbs_Plane' ? [0.5] : [0.08, 0.29, 0.5, 0.71, 0.92];
  for (const i of steps) {
    for (const j of steps) {
      const bend = bendAt(surface.EvalD2(u0 + i * (u1 - u0), v0 + j * (v1 - v0)), outward);
      if (bend) bends.push(bend);
    }
  }
  return bends;
}

/** First and second fundamental form at a point, and the principal curvatures from them. */
function bendAt(d: Geom_Surface_ResD2, outward: number): Bend | undefined {
  const point = take(d.Point);
  const du = take(d.D1U);
  const dv = take(d.D1V);
  const duu = take(d.D2U);
  const dvv = take(d.D2V);
  const duv = take(d.D2UV);
  const up = unit(cross(du, dv));
  if (!up) return undefined;
  const normal = scaled(up, outward);
  const e = dot(du, du);
  const f = dot(du, dv);
  const g = dot(dv, dv);
  const determinant = e * g - f * f;
  if (!(determinant > 1e-20 * e * g)) return undefined;
  const l = dot(duu, normal);
  const m = dot(duv, normal);
  const n = dot(dvv, normal);
  const mean = (e * n - 2 * f * m + g * l) / (2 * determinant);
  const gauss = (l * n - m * m) / determinant;
  const root = Math.sqrt(Math.max(0, mean * mean - gauss));
  const strong = mean >= 0 ? mean + root : mean - root;
  const weak = mean >= 0 ? mean - root : mean + root;
  return { point, normal, strong, weak };
}

/**
 * Axis of a surface of revolution: the circle along u through the middle of the face has its centre on the axis.
 * (The kernel's build has no class for cones and tori.) A torus is asked at v = 0, where the circle stands level with
 * its centre, wherever on the tube the face lies (ISO 10303-42, toroidal_surface).
 */
function axisOf(surface: BRepAdaptor_Surface, places = alongFace(surface)): Pick<CadFace, 'axis'> {
  for (const v of places) {
    const a = first(surface, 0, v);
    const b = first(surface, Math.PI, v);
    const quarter = first(surface, Math.PI / 2, v);
    const direction = unit(cross(a.du, quarter.du));
    if (direction && length(minus(a.point, b.point)) > 1e-9) {
      const origin: Vec3 = [
        (a.point[0] + b.point[0]) / 2,
        (a.point[1] + b.point[1]) / 2,
        (a.point[2] + b.point[2]) / 2,
      ];
      return { axis: { origin, direction } };
    }
  }
  return {};
}

/** Places along a face at which its axis is asked for: the middle, then near the ends, should the middle be a tip. */
function alongFace(surface: BRepAdaptor_Surface): number[] {
  const v0 = surface.FirstVParameter();
  const v1 = surface.LastVParameter();
  return [0.5, 0.9, 0.1].map((part) => v0 + part * (v1 - v0));
}

/** |dv| is the radius of the tube everywhere; |du| on the outer equator is the sum of both radii. */
function torusRadii(surface: BRepAdaptor_Surface): Pick<CadFace, 'radius_mm' | 'majorRadius_mm'> {
  const outer = first(surface, 0, 0);
  const radius_mm = length(outer.dv);
  return { radius_mm, majorRadius_mm: length(outer.du) - radius_mm };
}

function first(surface: BRepAdaptor_Surface, u: number, v: number): { point: Vec3; du: Vec3; dv: Vec3 } {
  const d = surface.EvalD1(u, v);
  return { point: take(d.Point), du: take(d.D1U), dv: take(d.D1V) };
}

/** Coordinates of a kernel point or vector, which is released. */
export function take(p: gp_Pnt | gp_Vec): Vec3 {
  const out: Vec3 = [p.X(), p.Y(), p.Z()];
  p.delete();
  return out;
}
