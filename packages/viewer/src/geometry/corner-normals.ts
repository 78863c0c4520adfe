import type { Shape } from '@coveline/model';

/** Triangles whose normals differ by less than this are shaded as one curved surface when no CAD face says so. */
const creaseCosine = Math.cos((35 * Math.PI) / 180);

/**
 * Shading normals: xyz per corner, three corners per triangle, unit length, frame of the shape. Corners of one CAD
 * face are averaged by the angle they take up at the vertex; without CAD faces, those within the crease angle.
 */
export function cornerNormals(shape: Shape): Float32Array {
  const { triangles, positions } = shape;
  const count = triangles.length / 3;
  const flat = triangleNormals(positions, triangles);
  const angle = cornerAngles(positions, triangles);
  const { start, corner } = cornersOfVertices(positions.length / 3, triangles);
  const face = shape.cad?.faceOfTriangle;
  const out = new Float32Array(count * 9);
  for (let c = 0; c < count * 3; c++) {
    const t = (c / 3) | 0;
    const nx = flat[t * 3];
    const ny = flat[t * 3 + 1];
    const nz = flat[t * 3 + 2];
    let x = 0;
    let y = 0;
    let z = 0;
    const vertex = triangles[c];
    for (let k = start[vertex]; k < start[vertex + 1]; k++) {
      const other = corner[k];
      const u = (other / 3) | 0;
      const mx = flat[u * 3];
      const my = flat[u * 3 + 1];
      const mz = flat[u * 3 + 2];
      const same = face ? face[u] === face[t] : nx * mx + ny * my + nz * mz > creaseCosine;
      if (!same) continue;
      x += mx * angle[other];
      y += my * angle[other];
      z += mz * angle[other];
    }
    const length = Math.hypot(x, y, z);
    out[c * 3] = length > 0 ? x / length : nx;
    out[c * 3 + 1] = length > 0 ? y / length : ny;
    out[c * 3 + 2] = length > 0 ? z / length : nz;
  }
  return out;
}

/** Unit normal per triangle; zero for triangles without area. */
export function triangleNormals(p: Float64Array, triangles: Uint32Array): Float32Array {
  const out = new Float32Array(triangles.length);
  for (let i = 0; i < triangles.length; i += 3) {
    const a = triangles[i] * 3;
    const b = triangles[i + 1] * 3;
    const c = triangles[i + 2] * 3;
    const ux = p[b] - p[a];
    const uy = p[b + 1] - p[a + 1];
    const uz = p[b + 2] - p[a + 2];
    const vx = p[c] - p[a];
    const vy = p[c + 1] - p[a + 1];
    const vz = p[c + 2] - p[a + 2];
    const x = uy * vz - uz * vy;
    const y = uz * vx - ux * vz;
    const z = ux * vy - uy * vx;
    const length = Math.hypot(x, y, z) || 1;
    out[i] = x / length;
    out[i + 1] = y / length;
    out[i + 2] = z / length;
  }
  return out;
}

function cornerAngles(p: Float64Array, triangles: Uint32Array): Float32Array {
  const out = new Float32Array(triangles.length);
  for (let i = 0; i < triangles.length; i += 3) {
    for (let k = 0; k < 3; k++) {
      const a = triangles[i + k] * 3;
      const b = triangles[i + ((k + 1) % 3)] * 3;
      const c = triangles[i + ((k + 2) % 3)] * 3;
      const ux = p[b] - p[a];
      const uy = p[b + 1] - p[a + 1];
      const uz = p[b + 2] - p[a + 2];
      const vx = p[c] - p[a];
      const vy = p[c + 1] - p[a + 1];
      const vz = p[c + 2] - p[a + 2];
      const lengths = Math.hypot(ux, uy, uz) * Math.hypot(vx, vy, vz);
      if (lengths > 0)
        out[i + k] = Math.acos(Math.min(1, Math.max(-1, (ux * vx + uy * vy + uz * vz) / lengths)));
    }
  }
  return out;
}

/** Corners that meet at each vertex, as one list with the start of each vertex. */
function cornersOfVertices(vertices: number, triangles: Uint32Array) {
  const start = new Uint32Array(vertices + 1);
  for (let c = 0; c < triangles.length; c++) start[triangles[c] + 1]++;
  for (let v = 0; v < vertices; v++) start[v + 1] += start[v];
  const next = start.slice(0, vertices);
  const corner = new Uint32Array(triangles.length);
  for (let c = 0; c < triangles.length; c++) corner[next[triangles[c]]++] = c;
  return { start, corner };
}
