/**
 * Border of a patch of free triangles: the edges that only one triangle has. Corners closer than `grid_mm` count
 * as the same. Returns two points per segment, xyz each.
 */
export function border(triangles: ArrayLike<number>, grid_mm = 1e-3): Float32Array {
  const ids = new Map<string, number>();
  const corners = triangles.length / 3;
  const id = new Uint32Array(corners);
  const firstCorner: number[] = [];
  for (let c = 0; c < corners; c++) {
    const key = `${Math.round(triangles[c * 3] / grid_mm)},${Math.round(triangles[c * 3 + 1] / grid_mm)},${Math.round(triangles[c * 3 + 2] / grid_mm)}`;
    let known = ids.get(key);
    if (known === undefined) {
      known = ids.size;
      ids.set(key, known);
      firstCorner.push(c);
    }
    id[c] = known;
  }
  const once = new Map<number, [number, number]>();
  for (let c = 0; c < corners; c += 3) {
    for (let k = 0; k < 3; k++) {
      const a = id[c + k];
      const b = id[c + ((k + 1) % 3)];
      const key = Math.min(a, b) * ids.size + Math.max(a, b);
      if (once.has(key)) once.delete(key);
      else once.set(key, [a, b]);
    }
  }
  const out = new Float32Array(once.size * 6);
  let at = 0;
  for (const ends of once.values()) {
    for (const end of ends) {
      const c = firstCorner[end] * 3;
      out[at++] = triangles[c];
      out[at++] = triangles[c + 1];
      out[at++] = triangles[c + 2];
    }
  }
  return out;
}
