import { type Eye, look, newSight } from './look.ts';
import { inside, type WallMesh } from './wall-mesh.ts';

/** What every vertex of a wall mesh sees. */
export interface Views {
  readonly state: Uint8Array;
  readonly width_mm: Float64Array;
  /** Part across, -1 for none. */
  readonly part: Int32Array;
  /** Triangle across, in model order, -1 for none. */
  readonly triangle: Int32Array;
  /** xyz per vertex that was looked from: vertices at the end of a wall look from a little inside it. */
  readonly from: Float64Array;
}

/**
 * Looks from every vertex. At the end of a wall the question whether a point touches or is buried has no clear answer
 * (a block's side begins on the plate that it stands on); the look is taken one contact distance inside, where a
 * block sunk by less than that still shows its side, and one sunk by more does not.
 */
export function lookFromWall(eye: Eye, mesh: WallMesh, step: () => void): Views {
  const n = mesh.xyz.length / 3;
  const views: Views = {
    state: new Uint8Array(n),
    width_mm: new Float64Array(n),
    part: new Int32Array(n),
    triangle: new Int32Array(n),
    from: withdrawn(mesh, eye.contact_mm),
  };
  const sight = newSight();
  for (let v = 0; v < n; v++) {
    if ((v & 0x3ff) === 0) step();
    const f = views.from;
    const m = mesh.normals;
    const i = 3 * v;
    const source = mesh.source[mesh.triangleOf[v]];
    look(eye, mesh.part, source, f[i], f[i + 1], f[i + 2], m[i], m[i + 1], m[i + 2], sight);
    views.state[v] = sight.state;
    views.width_mm[v] = sight.width_mm;
    views.part[v] = sight.part;
    views.triangle[v] = sight.triangle;
  }
  return views;
}

function withdrawn({ xyz, triangles, border, normals }: WallMesh, by_mm: number): Float64Array {
  const out = xyz.slice();
  const inward = new Float64Array(xyz.length);
  const count = new Uint8Array(xyz.length / 3);
  for (let h = 0; h < border.length; h++) {
    if (border[h] === inside) continue;
    const a = triangles[h] * 3;
    const b = triangles[h % 3 === 2 ? h - 2 : h + 1] * 3;
    const ex = xyz[b] - xyz[a];
    const ey = xyz[b + 1] - xyz[a + 1];
    const ez = xyz[b + 2] - xyz[a + 2];
    const wx = normals[a + 1] * ez - normals[a + 2] * ey;
    const wy = normals[a + 2] * ex - normals[a] * ez;
    const wz = normals[a] * ey - normals[a + 1] * ex;
    const length = Math.sqrt(wx * wx + wy * wy + wz * wz);
    if (length === 0) continue;
    for (let end = a, n = 0; n < 2; end = b, n++) {
      count[end / 3]++;
      inward[end] += wx / length;
      inward[end + 1] += wy / length;
      inward[end + 2] += wz / length;
    }
  }
  for (let v = 0; v < count.length; v++) {
    if (count[v] === 0) continue;
    const square = inward[3 * v] ** 2 + inward[3 * v + 1] ** 2 + inward[3 * v + 2] ** 2;
    // `by_mm` away from each of the edges that meet here, but not far off in a sharp corner.
    const step = square > 0.1 ? (by_mm * count[v]) / square : 0;
    for (let k = 0; k < 3; k++) out[3 * v + k] += step * inward[3 * v + k];
  }
  return out;
}
