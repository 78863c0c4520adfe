import type { Model } from '@coveline/model';
import { type Mesh, modelOf, type Placement, type Point } from './mesh.ts';

/** A model with one part per named mesh, placed where they were drawn. */
export function assemble(meshes: Readonly<Record<string, Mesh>>): Model {
  return modelOf(Object.entries(meshes).map(([id, mesh]) => ({ id, mesh })));
}

/** Several solids as one mesh. */
export function together(...meshes: readonly Mesh[]): Mesh {
  const positions: number[] = [];
  const triangles: number[] = [];
  for (const mesh of meshes) {
    const base = positions.length / 3;
    for (const x of mesh.positions) positions.push(x);
    for (const v of mesh.triangles) triangles.push(base + v);
  }
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) };
}

/** The same surface with the air on the other side: a cavity. */
export function insideOut({ positions, triangles }: Mesh): Mesh {
  const turned = triangles.slice();
  for (let i = 0; i < turned.length; i += 3) {
    turned[i + 1] = triangles[i + 2];
    turned[i + 2] = triangles[i + 1];
  }
  return { positions, triangles: turned };
}

/** A turn by an angle about any axis through the origin, then a shift. */
export function motion(at: Point = [0, 0, 0], axis: Point = [0, 0, 1], angle_deg = 0): Placement {
  const length = Math.hypot(...axis);
  const [x, y, z] = axis.map((c) => c / length);
  const s = Math.sin((angle_deg * Math.PI) / 180);
  const c = Math.cos((angle_deg * Math.PI) / 180);
  const k = 1 - c;
  const columns = [
    [x * x * k + c, x * y * k + z * s, x * z * k - y * s, 0],
    [x * y * k - z * s, y * y * k + c, y * z * k + x * s, 0],
    [x * z * k + y * s, y * z * k - x * s, z * z * k + c, 0],
    [...at, 1],
  ];
  return Float64Array.from(columns.flat());
}
