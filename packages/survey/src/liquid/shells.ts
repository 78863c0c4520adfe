import type { EdgeUse } from './edge-use.ts';

/** Pieces of a mesh that hang together by shared edges. */
export interface Shells {
  readonly ofTriangle: Uint32Array;
  /** 1 where an edge of the shell is not used equally often in both directions. */
  readonly open: Uint8Array;
  /** Signed volume, mm3: negative for a shell that is inside out; 0 for one that encloses next to nothing. */
  readonly volume: Float64Array;
  /** Surface, mm2. */
  readonly area: Float64Array;
}

/** A shell whose mean thickness (volume / area) is below this part of its size is a sheet that was drawn double. */
const leastThickness = 1e-7;

export function shellsOf(positions: Float64Array, triangles: Uint32Array, uses: EdgeUse): Shells {
  const count = triangles.length / 3;
  const root = new Int32Array(count).fill(-1);
  const find = (t: number): number => {
    let r = t;
    while (root[r] >= 0) r = root[r];
    while (root[t] >= 0) {
      const next = root[t];
      root[t] = r;
      t = next;
    }
    return r;
  };
  const firstOfEdge = new Int32Array(uses.count).fill(-1);
  for (let c = 0; c < triangles.length; c++) {
    const e = uses.ofCorner[c];
    const t = (c / 3) | 0;
    if (firstOfEdge[e] < 0) {
      firstOfEdge[e] = t;
      continue;
    }
    const a = find(t);
    const b = find(firstOfEdge[e]);
    if (a !== b) root[Math.max(a, b)] = Math.min(a, b);
  }
  const ofTriangle = new Uint32Array(count);
  const number = new Int32Array(count).fill(-1);
  let shells = 0;
  for (let t = 0; t < count; t++) {
    const r = find(t);
    if (number[r] < 0) number[r] = shells++;
    ofTriangle[t] = number[r];
  }
  const open = new Uint8Array(shells);
  for (let c = 0; c < triangles.length; c++) {
    const e = uses.ofCorner[c];
    if (uses.forward[e] !== uses.backward[e]) open[ofTriangle[(c / 3) | 0]] = 1;
  }
  const { volume, area } = sizes(positions, triangles, ofTriangle, shells);
  return { ofTriangle, open, volume, area };
}

function sizes(positions: Float64Array, triangles: Uint32Array, ofTriangle: Uint32Array, shells: number) {
  const volume = new Float64Array(shells);
  const area = new Float64Array(shells);
  const [ox, oy, oz] = positions;
  for (let t = 0; t < ofTriangle.length; t++) {
    const a = triangles[t * 3] * 3;
    const b = triangles[t * 3 + 1] * 3;
    const c = triangles[t * 3 + 2] * 3;
    const abx = positions[b] - positions[a];
    const aby = positions[b + 1] - positions[a + 1];
    const abz = positions[b + 2] - positions[a + 2];
    const acx = positions[c] - positions[a];
    const acy = positions[c + 1] - positions[a + 1];
    const acz = positions[c + 2] - positions[a + 2];
    const nx = aby * acz - abz * acy;
    const ny = abz * acx - abx * acz;
    const nz = abx * acy - aby * acx;
    const dot = (positions[a] - ox) * nx + (positions[a + 1] - oy) * ny + (positions[a + 2] - oz) * nz;
    volume[ofTriangle[t]] += dot / 6;
    area[ofTriangle[t]] += Math.hypot(nx, ny, nz) / 2;
  }
  for (let s = 0; s < shells; s++) {
    if (Math.abs(volume[s]) < leastThickness * area[s] ** 1.5) volume[s] = 0;
  }
  return { volume, area };
}

/** Winding of all other shells of the shape around a point of this shell: how deep inside the others it lies. */
export function windingAround(
  positions: Float64Array,
  triangles: Uint32Array,
  { ofTriangle }: Shells,
  shell: number,
): number {
  const t = ofTriangle.indexOf(shell);
  // An uneven mean of the corners, so that the upward ray avoids the symmetric places where meshes have edges.
  const weights = [0.4142, 0.3178, 0.268];
  const at = [0, 1, 2].map((k) =>
    weights.reduce((s, w, corner) => s + w * positions[triangles[t * 3 + corner] * 3 + k], 0),
  );
  let winding = 0;
  for (let o = 0; o < ofTriangle.length; o++) {
    if (ofTriangle[o] !== shell) winding += crossingAbove(positions, triangles, o, at[0], at[1], at[2]);
  }
  return winding;
}

/** +1 where the upward ray from the point leaves through the triangle, -1 where it enters, 0 where it misses. */
function crossingAbove(
  positions: Float64Array,
  triangles: Uint32Array,
  t: number,
  x: number,
  y: number,
  z: number,
): number {
  const a = triangles[t * 3] * 3;
  const b = triangles[t * 3 + 1] * 3;
  const c = triangles[t * 3 + 2] * 3;
  const ax = positions[a] - x;
  const ay = positions[a + 1] - y;
  const bx = positions[b] - x;
  const by = positions[b + 1] - y;
  const cx = positions[c] - x;
  const cy = positions[c + 1] - y;
  const wc = ax * by - ay * bx;
  const wa = bx * cy - by * cx;
  const wb = cx * ay - cy * ax;
  const up = wa > 0 && wb > 0 && wc > 0;
  const down = wa < 0 && wb < 0 && wc < 0;
  if (!up && !down) return 0;
  const height = (wa * positions[a + 2] + wb * positions[b + 2] + wc * positions[c + 2]) / (wa + wb + wc);
  if (height <= z) return 0;
  return up ? 1 : -1;
}
