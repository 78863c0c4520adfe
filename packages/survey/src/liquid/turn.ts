/**
 * The turn of the column grid about the vertical.
 *
 * A wall that runs along the grid is counted with an error of up to half a column over its whole length, and one
 * that runs at a simple slope to it (1:1, 1:2) nearly so. The grid is therefore turned so that the steep faces of
 * the model, weighted by area, stand as far from such directions as can be, unless that makes the grid much larger
 than the ground plan: a long line of machines is hardly turned at all.
 */

/** Directions, degrees from a grid axis, at which walls and columns beat, with how badly. Symmetric about 45. */
const resonances: readonly (readonly [number, number])[] = [
  [0, 1],
  [45, 0.35],
  [Math.atan(1 / 2) * (180 / Math.PI), 0.09],
  [Math.atan(1 / 3) * (180 / Math.PI), 0.03],
];
const width_deg = 5;
/** Where the model has no walls: the slope least well approximated by fractions, from memory (golden ratio). */
const golden_deg = 31.717;

/** Angle in radians by which the grid is turned against x. `xyz` per vertex, mm. */
export function turnAgainstWalls(xyz: Float64Array, triangles: Uint32Array): number {
  const walls = wallDirections(xyz, triangles);
  const outline = extremePoints(xyz);
  let smallest = Infinity;
  for (let d = 0; d < 90; d++) smallest = Math.min(smallest, boxArea(outline, (d * Math.PI) / 180));
  smallest = Math.max(smallest, 1e-9);
  let best = golden_deg;
  let least = Infinity;
  for (let step = 0; step < 180; step++) {
    // Candidates spread from the golden angle in a fixed order, half a degree apart.
    const candidate = golden_deg + step / 2;
    let badness = (largerBox * boxArea(outline, (candidate * Math.PI) / 180)) / smallest;
    for (let d = 0; d < 90; d++) if (walls[d] > 0) badness += walls[d] * beat(d + 0.5 - candidate);
    if (badness < least * (1 - 1e-9)) {
      least = badness;
      best = candidate;
    }
  }
  return ((best % 90) * Math.PI) / 180;
}

/** Badness of a bounding box twice as large. */
const largerBox = 0.05;
/** Directions in which the outline of the ground plan is taken. */
const directions = 32;

/** The vertices that lie farthest out in evenly spread directions: x, y of each. */
function extremePoints(xyz: Float64Array): Float64Array {
  const out = new Float64Array(directions * 2);
  for (let d = 0; d < directions; d++) {
    const c = Math.cos((2 * Math.PI * d) / directions);
    const s = Math.sin((2 * Math.PI * d) / directions);
    let far = -Infinity;
    for (let i = 0; i < xyz.length; i += 3) {
      const along = c * xyz[i] + s * xyz[i + 1];
      if (along <= far) continue;
      far = along;
      out[d * 2] = xyz[i];
      out[d * 2 + 1] = xyz[i + 1];
    }
  }
  return out;
}

/** Area of the box along axes turned by the angle (radians) around points, mm2. */
function boxArea(points: Float64Array, angle: number): number {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  let [uLow, uHigh, vLow, vHigh] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let i = 0; i < points.length; i += 2) {
    const u = c * points[i] + s * points[i + 1];
    const v = c * points[i + 1] - s * points[i];
    uLow = Math.min(uLow, u);
    uHigh = Math.max(uHigh, u);
    vLow = Math.min(vLow, v);
    vHigh = Math.max(vHigh, v);
  }
  return (uHigh - uLow) * (vHigh - vLow);
}

function beat(angle_deg: number): number {
  let off = ((angle_deg % 90) + 90) % 90;
  if (off > 45) off = 90 - off;
  let sum = 0;
  for (const [at, weight] of resonances) sum += weight * Math.exp(-(((off - at) / width_deg) ** 2));
  return sum;
}

/** Area of faces steeper than 45 degrees by the direction of their normal, degrees modulo 90, as a share of all. */
function wallDirections(xyz: Float64Array, triangles: Uint32Array): Float64Array {
  const walls = new Float64Array(90);
  let total = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const a = triangles[t] * 3;
    const b = triangles[t + 1] * 3;
    const c = triangles[t + 2] * 3;
    const abx = xyz[b] - xyz[a];
    const aby = xyz[b + 1] - xyz[a + 1];
    const abz = xyz[b + 2] - xyz[a + 2];
    const acx = xyz[c] - xyz[a];
    const acy = xyz[c + 1] - xyz[a + 1];
    const acz = xyz[c + 2] - xyz[a + 2];
    const nx = aby * acz - abz * acy;
    const ny = abz * acx - abx * acz;
    const nz = abx * acy - aby * acx;
    if (nx * nx + ny * ny <= nz * nz) continue;
    const area = Math.sqrt(nx * nx + ny * ny + nz * nz);
    const angle = (Math.atan2(ny, nx) * 180) / Math.PI + 360;
    walls[Math.floor(angle % 90)] += area;
    total += area;
  }
  if (total > 0) for (let d = 0; d < 90; d++) walls[d] /= total;
  return walls;
}
