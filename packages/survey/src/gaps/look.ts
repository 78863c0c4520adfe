import type { Model } from '@coveline/model';
import type { SurveySettings } from '../result.ts';
import type { Material } from '../tree/inside.ts';
import { firstAlong, type Hit, newHit, newRay, type Ray } from '../tree/ray.ts';
import { newWhereabouts, partNear, type Whereabouts } from '../tree/whereabouts.ts';
import { ontoTrueSurface, type TrueSurfaces } from './true-surface.ts';

/** What stands before a point of a surface. */
export const open = 0;
/** A facing wall, nearer than the limit. */
export const gap = 1;
/** Another part that touches it. */
export const met = 2;

/** The answer for one point. Reuse one object for many. */
export interface Sight {
  state: typeof open | typeof gap | typeof met;
  /** Distance across the air; on `met`, how far off the other part's surface is, negative where it is sunk a little. */
  width_mm: number;
  /** Triangle (model order) and part across; -1 when there is none. */
  triangle: number;
  part: number;
}

export function newSight(): Sight {
  return { state: open, width_mm: Infinity, triangle: -1, part: -1 };
}

export interface Eye {
  readonly material: Material;
  readonly whereabouts: Whereabouts;
  readonly surfaces: TrueSurfaces;
  readonly limit_mm: number;
  readonly contact_mm: number;
  /** Looks start this far behind the surface, so that touching and slightly sunken surfaces are seen. */
  readonly back_mm: number;
  readonly deviation_mm: number;
  /** Per part: 1 when its surface runs into another part, so that what it sees may lie in material. */
  readonly sunken: Uint8Array;
  readonly ray: Ray;
  readonly hit: Hit;
}

export function newEye(model: Model, material: Material, settings: SurveySettings): Eye {
  const ray = newRay();
  ray.crossing = -1;
  return {
    material,
    whereabouts: newWhereabouts(material),
    surfaces: { model, start: material.tree.start },
    // A gap of exactly the limit is not below it, whatever its last digits.
    limit_mm: settings.gapBelow_mm - 1e-6,
    contact_mm: settings.contact_mm + 1e-9,
    back_mm: settings.contact_mm + 2 * model.deviation_mm,
    deviation_mm: model.deviation_mm,
    sunken: new Uint8Array(model.parts.length),
    ray,
    hit: newHit(),
  };
}

/** Two walls face each other when their normals are at most 60 degrees from opposite: a wedge below 60 degrees. */
export const facing = -0.5;
const near = new Float64Array(6);
const far = new Float64Array(6);

/**
 * Looks from a point of a triangle (model order) along its outward normal for a wall across the air. The look ends at
 * the first surface that the ray enters; the distance is taken between the true CAD surfaces where they are known.
 */
export function look(
  eye: Eye,
  part: number,
  triangle: number,
  x: number,
  y: number,
  z: number,
  nx: number,
  ny: number,
  nz: number,
  sight: Sight,
): void {
  const { ray, hit, back_mm: back, material, surfaces } = eye;
  sight.state = open;
  sight.width_mm = Infinity;
  sight.triangle = -1;
  sight.part = -1;
  const curved = ontoTrueSurface(surfaces, part, triangle, x, y, z, near);
  if (curved) [x, y, z, nx, ny, nz] = near;
  ray.ox = x - nx * back;
  ray.oy = y - ny * back;
  ray.oz = z - nz * back;
  ray.dx = nx;
  ray.dy = ny;
  ray.dz = nz;
  ray.tMax = back + eye.limit_mm + eye.deviation_mm;
  ray.skipPart = part;
  ray.skipUntil = back + 1e-6;
  if (!firstAlong(material.tree, ray, hit)) return;
  if (slope(material.tree.corners, hit.slot * 9, nx, ny, nz) > facing) return;
  let width = hit.t - back;
  const [qx, qy, qz] = [x + nx * width, y + ny * width, z + nz * width];
  const curvedAcross = ontoTrueSurface(surfaces, hit.part, hit.triangle, qx, qy, qz, far);
  if (curvedAcross) width = (far[0] - x) * nx + (far[1] - y) * ny + (far[2] - z) * nz;
  if (width <= eye.contact_mm && hit.part !== part) {
    if (width < -eye.contact_mm) return;
    sight.state = met;
  } else if (width > 0 && width < eye.limit_mm) {
    // Between coarse triangles of round surfaces the middle of a true gap may lie in drawn material.
    const sure = (curved || curvedAcross) && width < 4 * eye.deviation_mm;
    const doubtful = !sure && (eye.sunken[part] === 1 || eye.sunken[hit.part] === 1);
    const half = width / 2;
    if (doubtful && partNear(eye.whereabouts, x + nx * half, y + ny * half, z + nz * half) >= 0) return;
    sight.state = gap;
  } else return;
  sight.width_mm = width;
  sight.part = hit.part;
  sight.triangle = hit.triangle;
}

/** Cosine between a direction and the normal of the triangle whose corners start at `i`. */
function slope(c: Float64Array, i: number, x: number, y: number, z: number): number {
  const [ux, uy, uz] = [c[i + 3] - c[i], c[i + 4] - c[i + 1], c[i + 5] - c[i + 2]];
  const [vx, vy, vz] = [c[i + 6] - c[i], c[i + 7] - c[i + 1], c[i + 8] - c[i + 2]];
  const nx = uy * vz - uz * vy;
  const ny = uz * vx - ux * vz;
  const nz = ux * vy - uy * vx;
  return (nx * x + ny * y + nz * z) / (Math.sqrt(nx * nx + ny * ny + nz * nz) || 1);
}
