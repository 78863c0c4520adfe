/** How much of a part's surface lies inside it: the inner walls of tubes, whether their ends are open or closed. */
import type { Model } from '@coveline/model';
import { anyHit, buildTree } from '@coveline/survey';

/** Points on the surface, and rays from each. */
const points = 400;
const rays = 24;
/** A point of which this share of rays ends on the part itself lies inside. In a tube only its ends let rays out. */
const inside = 0.9;

/**
 * Area of inner walls of one part alone, cm2. A lower estimate: walls within about a width of an open end see out and
 * do not count. Points are spread by area, rays over the half
 * space of the air in a fixed order, so that the same shape gives the same number.
 */
export function innerWalls(model: Model, part: number): number {
  const { shape } = model.parts[part];
  const { positions, triangles } = model.shapes[shape];
  const alone: Model = { ...model, parts: [{ ...model.parts[part], placement: identity }] };
  const tree = buildTree(alone);
  const areas = areasOf(positions, triangles);
  const total = areas.reduce((a, b) => a + b, 0);
  if (total === 0) return 0;
  let within = 0;
  let passed = 0;
  let next = 0;
  for (let t = 0; t < areas.length; t++) {
    passed += areas[t];
    for (; next < points && (next + 0.5) * (total / points) <= passed; next++) {
      if (liesInside(tree, positions, triangles, t, next)) within++;
    }
  }
  return ((within / points) * total) / 100;
}

const identity = Float64Array.of(1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1);

function areasOf(xyz: Float64Array, triangles: Uint32Array): Float64Array {
  const out = new Float64Array(triangles.length / 3);
  for (let t = 0; t < out.length; t++) out[t] = Math.hypot(...crossOf(xyz, triangles, t)) / 2;
  return out;
}

function crossOf(xyz: Float64Array, triangles: Uint32Array, t: number): [number, number, number] {
  const [a, b, c] = [3 * triangles[3 * t], 3 * triangles[3 * t + 1], 3 * triangles[3 * t + 2]];
  const [ux, uy, uz] = [xyz[b] - xyz[a], xyz[b + 1] - xyz[a + 1], xyz[b + 2] - xyz[a + 2]];
  const [vx, vy, vz] = [xyz[c] - xyz[a], xyz[c + 1] - xyz[a + 1], xyz[c + 2] - xyz[a + 2]];
  return [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
}

function liesInside(
  tree: ReturnType<typeof buildTree>,
  xyz: Float64Array,
  triangles: Uint32Array,
  t: number,
  seed: number,
): boolean {
  const n = crossOf(xyz, triangles, t);
  const length = Math.hypot(...n);
  if (length === 0) return false;
  // A place on the triangle by two low-discrepancy numbers (Roberts, the R2 sequence), folded into it.
  let u = (seed * 0.7548776662466927) % 1;
  let v = (seed * 0.5698402909980532) % 1;
  if (u + v > 1) [u, v] = [1 - u, 1 - v];
  const [a, b, c] = [3 * triangles[3 * t], 3 * triangles[3 * t + 1], 3 * triangles[3 * t + 2]];
  const at = [0, 1, 2].map((i) => {
    const onFace = xyz[a + i] * (1 - u - v) + xyz[b + i] * u + xyz[c + i] * v;
    return onFace + (n[i] / length) * 1e-3;
  });
  let blocked = 0;
  for (let r = 0; r < rays; r++) {
    const [x, y, z] = onSphere(r);
    const side = x * n[0] + y * n[1] + z * n[2] < 0 ? -1 : 1;
    if (anyHit(tree, at[0], at[1], at[2], side * x, side * y, side * z, Infinity)) blocked++;
  }
  return blocked >= inside * rays;
}

/** The r-th of `rays` directions, spread over the sphere by the golden angle. */
function onSphere(r: number): [number, number, number] {
  const z = 1 - (2 * r + 1) / rays;
  const across = Math.sqrt(1 - z * z);
  const turn = r * Math.PI * (3 - Math.sqrt(5));
  return [across * Math.cos(turn), across * Math.sin(turn), z];
}
