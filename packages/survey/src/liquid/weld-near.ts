import { defaultSettings } from '../settings.ts';
import { weldVertices } from '../weld/weld.ts';

/** As parts nearer than this count as touching, so do the two sides of a crack in one surface. */
const crack_mm = defaultSettings.contact_mm;

/**
 * The same triangles with vertices nearer than the contact distance made one, named by the lowest of them (three vertex
 * indices each; xyz per vertex, mm). Triangles that shrink to a line stay, with a vertex twice.
 */
export function weldNear(positions: Float64Array, triangles: Uint32Array): Uint32Array {
  const group = weldVertices(positions, triangles, crack_mm).triangles;
  const lowest = new Uint32Array(positions.length / 3).fill(0xffffffff);
  for (let c = 0; c < group.length; c++) lowest[group[c]] = Math.min(lowest[group[c]], triangles[c]);
  return group.map((g) => lowest[g]);
}
