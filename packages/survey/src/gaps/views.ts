import { partNear } from '../tree/whereabouts.ts';
import { type Eye, look, met, newSight, open, type Sight } from './look.ts';
import { inside, type WallMesh } from './wall-mesh.ts';

/** What every vertex of a wall mesh sees. */
export interface Views {
  readonly state: Uint8Array;
  readonly width_mm: Float64Array;
  /** Part across, -1 for none. */
  readonly part: Int32Array;
  /** Triangle across, in model order, -1 for none. */
  readonly triangle: Int32Array;
  /** 1 where surfaces touch. */
  readonly touching: Uint8Array;
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
    touching: new Uint8Array(n),
    from: withdrawn(mesh, eye.contact_mm),
  };
  const sight = newSight();
  const lookout = lookoutTriangles(eye, mesh);
  for (let v = 0; v < n; v++) {
    if ((v & 0xfff) === 0) step();
    const f = views.from;
    const m = mesh.normals;
    const i = 3 * v;
    lookFrom(eye, mesh, lookout[v], f[i], f[i + 1], f[i + 2], m[i], m[i + 1], m[i + 2], sight);
    views.state[v] = sight.state;
    views.width_mm[v] = sight.width_mm;
    views.part[v] = sight.part;
    views.triangle[v] = sight.triangle;
    views.touching[v] = sight.touching ? 1 : 0;
  }
  return views;
}

/**
 * Per vertex a triangle to look from, one that another part runs through where there is a choice: only in such
 * triangles does burial begin or end, so only there is it asked for.
 */
function lookoutTriangles({ crossed }: Eye, { triangles, source, triangleOf }: WallMesh): Uint32Array {
  const out = triangleOf.slice();
  for (let h = 0; h < triangles.length; h++) {
    const t = (h / 3) | 0;
    if (crossed[source[t]] === 1) out[triangles[h]] = t;
  }
  return out;
}

/** One look from a place of a triangle of the mesh; where nothing faces it, asks whether it is buried. */
export function lookFrom(
  eye: Eye,
  mesh: WallMesh,
  triangle: number,
  x: number,
  y: number,
  z: number,
  nx: number,
  ny: number,
  nz: number,
  sight: Sight,
): void {
  look(eye, mesh.part, mesh.source[triangle], x, y, z, nx, ny, nz, sight);
  if (sight.state !== open || eye.crossed[mesh.source[triangle]] === 0) return;
  const lift = eye.contact_mm;
  const holder = partNear(eye.whereabouts, x + nx * lift, y + ny * lift, z + nz * lift);
  if (holder < 0) return;
  sight.state = met;
  sight.part = holder;
  sight.width_mm = -Infinity;
}

function withdrawn({ xyz, triangles, border, normals }: WallMesh, by_mm: number): Float64Array {
  const out = xyz.slice();
  const inward = new Float64Array(xyz.length);
  const count = new Uint8Array(xyz.length / 3);
  for (let h = 0; h < border.length; h++) {
    if (border[h] === inside) continue;
    const a = triangles[h];
    const b = triangles[h % 3 === 2 ? h - 2 : h + 1];
    const [ex, ey, ez] = [0, 1, 2].map((k) => xyz[3 * b + k] - xyz[3 * a + k]);
    const [nx, ny, nz] = normals.subarray(3 * a, 3 * a + 3);
    const w = [ny * ez - nz * ey, nz * ex - nx * ez, nx * ey - ny * ex];
    const length = Math.hypot(w[0], w[1], w[2]);
    if (length === 0) continue;
    for (const v of [a, b]) {
      count[v]++;
      for (let k = 0; k < 3; k++) inward[3 * v + k] += w[k] / length;
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
