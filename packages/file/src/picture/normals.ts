import type { Shape } from '@coveline/model';

/** Faces that meet at less than this are shaded as one smooth surface. Common practice. */
const smoothBelow_deg = 38;

const known = new WeakMap<Shape, Float32Array>();

/**
 * Normals for smooth shading: xyz for each of the three corners of every triangle, in the frame of the shape.
 * At each corner the normals of the triangles around it are averaged by area, as far as they turn by less than a
 * crease. Computed once for a shape.
 */
export function cornerNormals(shape: Shape): Float32Array {
  const done = known.get(shape);
  if (done) return done;
  const { positions: xyz, triangles } = shape;
  const count = triangles.length / 3;
  const flat = new Float64Array(count * 3);
  const size = new Float64Array(count);
  for (let t = 0; t < count; t++) {
    const [a, b, c] = [triangles[t * 3] * 3, triangles[t * 3 + 1] * 3, triangles[t * 3 + 2] * 3];
    const ux = xyz[b] - xyz[a];
    const uy = xyz[b + 1] - xyz[a + 1];
    const uz = xyz[b + 2] - xyz[a + 2];
    const vx = xyz[c] - xyz[a];
    const vy = xyz[c + 1] - xyz[a + 1];
    const vz = xyz[c + 2] - xyz[a + 2];
    const nx = uy * vz - uz * vy;
    const ny = uz * vx - ux * vz;
    const nz = ux * vy - uy * vx;
    const length = Math.hypot(nx, ny, nz);
    size[t] = length;
    const scale = length > 0 ? 1 / length : 0;
    flat[t * 3] = nx * scale;
    flat[t * 3 + 1] = ny * scale;
    flat[t * 3 + 2] = nz * scale;
  }
  const { first, next } = trianglesAround(triangles, xyz.length / 3);
  const limit = Math.cos((smoothBelow_deg * Math.PI) / 180);
  const out = new Float32Array(triangles.length * 3);
  for (let corner = 0; corner < triangles.length; corner++) {
    const t = Math.floor(corner / 3) * 3;
    let x = 0;
    let y = 0;
    let z = 0;
    for (let other = first[triangles[corner]]; other >= 0; other = next[other]) {
      const o = Math.floor(other / 3);
      const turn = flat[t] * flat[o * 3] + flat[t + 1] * flat[o * 3 + 1] + flat[t + 2] * flat[o * 3 + 2];
      if (turn < limit) continue;
      x += flat[o * 3] * size[o];
      y += flat[o * 3 + 1] * size[o];
      z += flat[o * 3 + 2] * size[o];
    }
    const length = Math.hypot(x, y, z);
    out[corner * 3] = length > 0 ? x / length : flat[t];
    out[corner * 3 + 1] = length > 0 ? y / length : flat[t + 1];
    out[corner * 3 + 2] = length > 0 ? z / length : flat[t + 2];
  }
  known.set(shape, out);
  return out;
}

/** Linked lists of the triangle corners at each vertex. */
function trianglesAround(triangles: Uint32Array, vertices: number) {
  const first = new Int32Array(vertices).fill(-1);
  const next = new Int32Array(triangles.length);
  for (let corner = triangles.length - 1; corner >= 0; corner--) {
    next[corner] = first[triangles[corner]];
    first[triangles[corner]] = corner;
  }
  return { first, next };
}
