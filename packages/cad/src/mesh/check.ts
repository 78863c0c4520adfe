/** What a triangle mesh is worth as a body: does it close, and which side is inside. */

/**
 * Edges that do not have exactly one triangle on each side (a closed, consistently wound mesh has none).
 * `triangles`: three vertex indices each; vertices are shared.
 */
export function openEdges(triangles: Uint32Array, vertexCount: number): number {
  const n = triangles.length;
  const up = new Float64Array(n);
  const down = new Float64Array(n);
  let ups = 0;
  let downs = 0;
  for (let i = 0; i < n; i += 3) {
    for (let k = 0; k < 3; k++) {
      const a = triangles[i + k];
      const b = triangles[i + ((k + 1) % 3)];
      if (a < b) up[ups++] = a * vertexCount + b;
      else down[downs++] = b * vertexCount + a;
    }
  }
  const one = up.subarray(0, ups).sort();
  const two = down.subarray(0, downs).sort();
  let open = 0;
  let i = 0;
  let j = 0;
  while (i < ups || j < downs) {
    if (j >= downs || (i < ups && one[i] < two[j])) {
      open++;
      i++;
    } else if (i >= ups || two[j] < one[i]) {
      open++;
      j++;
    } else {
      i++;
      j++;
    }
  }
  return open;
}

/** Volume enclosed by a closed mesh, mm3; positive where the triangles are wound counter-clockwise from outside. */
export function signedVolume(positions: Float64Array, triangles: Uint32Array): number {
  if (positions.length === 0) return 0;
  // Relative to a vertex of the body, so that a small body far away keeps its digits.
  const ox = positions[0];
  const oy = positions[1];
  const oz = positions[2];
  let sum = 0;
  for (let i = 0; i < triangles.length; i += 3) {
    const a = triangles[i] * 3;
    const b = triangles[i + 1] * 3;
    const c = triangles[i + 2] * 3;
    const ax = positions[a] - ox;
    const ay = positions[a + 1] - oy;
    const az = positions[a + 2] - oz;
    const bx = positions[b] - ox;
    const by = positions[b + 1] - oy;
    const bz = positions[b + 2] - oz;
    const cx = positions[c] - ox;
    const cy = positions[c + 1] - oy;
    const cz = positions[c + 2] - oz;
    sum += ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
  }
  return sum / 6;
}

/** Turns every triangle over, in place. */
export function flipTriangles(triangles: Uint32Array): void {
  for (let i = 0; i < triangles.length; i += 3) {
    const a = triangles[i + 1];
    triangles[i + 1] = triangles[i + 2];
    triangles[i + 2] = a;
  }
}
