/** How often each undirected edge of a triangle mesh is used in either direction, and by which triangles. */
export interface EdgeUse {
  readonly count: number;
  /** Lower and higher vertex index per edge. */
  readonly low: Uint32Array;
  readonly high: Uint32Array;
  /** Uses from low to high, and from high to low. */
  readonly forward: Uint32Array;
  readonly backward: Uint32Array;
  /** Per corner of a triangle: the edge that starts there. */
  readonly ofCorner: Uint32Array;
  /** Edges whose two counts differ: none in a closed, consistently wound mesh. */
  readonly unbalanced: number;
}

/** Sides of zero length (a triangle with a repeated vertex) count as an edge that is in balance. */
export function edgeUse(triangles: Uint32Array): EdgeUse {
  const corners = triangles.length;
  let size = 16;
  while (size < corners * 1.5) size *= 2;
  const slots = new Int32Array(size).fill(-1);
  const low = new Uint32Array(corners);
  const high = new Uint32Array(corners);
  const forward = new Uint32Array(corners);
  const backward = new Uint32Array(corners);
  const ofCorner = new Uint32Array(corners);
  let count = 0;
  for (let c = 0; c < corners; c++) {
    const a = triangles[c];
    const b = triangles[c % 3 === 2 ? c - 2 : c + 1];
    const lo = Math.min(a, b);
    const hi = Math.max(a, b);
    let slot = (Math.imul(lo, 0x9e3779b1) ^ Math.imul(hi, 0x85ebca6b)) & (size - 1);
    let e = slots[slot];
    while (e >= 0 && (low[e] !== lo || high[e] !== hi)) {
      slot = (slot + 1) & (size - 1);
      e = slots[slot];
    }
    if (e < 0) {
      e = count++;
      slots[slot] = e;
      low[e] = lo;
      high[e] = hi;
    }
    if (a <= b) forward[e]++;
    if (a >= b) backward[e]++;
    ofCorner[c] = e;
  }
  let unbalanced = 0;
  for (let e = 0; e < count; e++) if (forward[e] !== backward[e]) unbalanced++;
  return { count, low, high, forward, backward, ofCorner, unbalanced };
}
