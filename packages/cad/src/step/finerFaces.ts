/** Which faces of a body need triangles that keep closer to them, because a pool could stand on them. */
import type { Tessellation } from './tessellate.ts';

/**
 * A wide, shallow face gets triangles within this part of the height over which it bulges, or of the depth from which
 * pools are held to 1 %, where that is less. A spherical cap of depth h over an area A holds A h/2, and triangles
 * within d of it cut off A d/2 at most on average: the share d/h. Measured on dishes, grooves and troughs it is 0.55 d/h
 * (`validation/cad/shallow-faces.test.ts`), so 1.25 % of 2 mm keeps such a pool within 0.7 %.
 */
const partOfDepth = 0.0125;
const leastDepth_mm = 2;
/** Shallow: the face is larger than what it covers, seen straight on, by less than this; caps up to 26 degrees. */
const shallow = 1 / 0.95;
/** On a smaller face a whole deviation of 0.1 mm is 0.05 mL: no pool that is worth a line. */
const least_mm2 = 1000;
/** Finer than this is not asked for: far under what is made, mm. */
const finest_mm = 0.002;
/** Triangles that a body may have on such faces, about; one that would need more is kept to a coarser deviation. */
const most = 30_000;

/**
 * Deviation, mm, by number of the face, of those that need a finer one than `deviation_mm`, with which the body was
 * triangulated.
 */
export function finerFaces(
  { positions: p, triangles, cad }: Pick<Tessellation, 'positions' | 'triangles' | 'cad'>,
  deviation_mm: number,
): Map<number, number> {
  const n = cad.faces.length;
  const normals = new Float64Array(n * 3);
  const areas = new Float64Array(n);
  const counts = new Uint32Array(n);
  for (let t = 0; t < cad.faceOfTriangle.length; t++) {
    const face = cad.faceOfTriangle[t];
    const [a, b, c] = [triangles[t * 3] * 3, triangles[t * 3 + 1] * 3, triangles[t * 3 + 2] * 3];
    const [ux, uy, uz] = [p[b] - p[a], p[b + 1] - p[a + 1], p[b + 2] - p[a + 2]];
    const [vx, vy, vz] = [p[c] - p[a], p[c + 1] - p[a + 1], p[c + 2] - p[a + 2]];
    const x = (uy * vz - uz * vy) / 2;
    const y = (uz * vx - ux * vz) / 2;
    const z = (ux * vy - uy * vx) / 2;
    normals[face * 3] += x;
    normals[face * 3 + 1] += y;
    normals[face * 3 + 2] += z;
    areas[face] += Math.hypot(x, y, z);
    counts[face]++;
  }
  const low = new Float64Array(n).fill(Infinity);
  const high = new Float64Array(n).fill(-Infinity);
  for (let i = 0; i < triangles.length; i++) {
    const face = cad.faceOfTriangle[(i / 3) | 0];
    const [v, f] = [triangles[i] * 3, face * 3];
    const height = p[v] * normals[f] + p[v + 1] * normals[f + 1] + p[v + 2] * normals[f + 2];
    if (height < low[face]) low[face] = height;
    if (height > high[face]) high[face] = height;
  }
  const wanted = new Map<number, number>();
  let expected = 0;
  for (let face = 0; face < n; face++) {
    const flat = Math.hypot(normals[face * 3], normals[face * 3 + 1], normals[face * 3 + 2]);
    if (cad.faces[face].kind === 'plane' || areas[face] < least_mm2 || areas[face] > shallow * flat) continue;
    const bulge_mm = (high[face] - low[face]) / flat;
    const own = Math.max(finest_mm, partOfDepth * Math.min(leastDepth_mm, bulge_mm));
    if (own >= deviation_mm) continue;
    wanted.set(face, own);
    expected += (counts[face] * deviation_mm) / own;
  }
  // Triangles on a face bent both ways grow in number as the deviation falls.
  const coarser = Math.max(1, expected / most);
  return new Map(
    [...wanted].map(([face, own]) => [face, own * coarser] as const).filter(([, own]) => own < deviation_mm),
  );
}
