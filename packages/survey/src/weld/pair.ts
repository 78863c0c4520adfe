/**
 * Finds the other side of every half-edge: the one between the same two vertices in the opposite direction. Where
 * more than two triangles meet at an edge they are paired in order of appearance.
 *
 * Half-edges are put into one list per lower vertex; `waiting` then remembers, per higher vertex, the half-edges
 * that have found no partner yet, so that a vertex with thousands of triangles costs no more than others.
 */
export function pairHalfEdges(
  triangles: Uint32Array,
  vertexCount: number,
): { twin: Int32Array; open: number } {
  const n = triangles.length;
  const twin = new Int32Array(n).fill(-1);
  const start = new Uint32Array(vertexCount + 1);
  for (let h = 0; h < n; h++) {
    if (isLine(triangles, h)) continue;
    start[Math.min(triangles[h], triangles[following(h)]) + 1]++;
  }
  for (let v = 0; v < vertexCount; v++) start[v + 1] += start[v];
  const list = new Uint32Array(start[vertexCount]);
  const fill = start.slice(0, vertexCount);
  for (let h = 0; h < n; h++) {
    if (isLine(triangles, h)) continue;
    list[fill[Math.min(triangles[h], triangles[following(h)])]++] = h;
  }
  const waiting = new Int32Array(vertexCount).fill(-1);
  const next = new Int32Array(n).fill(-1);
  let open = 0;
  for (let v = 0; v < vertexCount; v++) {
    for (let i = start[v]; i < start[v + 1]; i++) {
      const h = list[i];
      const upward = triangles[h] === v;
      const other = upward ? triangles[following(h)] : triangles[h];
      let before = -1;
      let partner = waiting[other];
      while (partner >= 0 && (triangles[partner] === v) === upward) {
        before = partner;
        partner = next[partner];
      }
      if (partner < 0) {
        next[h] = waiting[other];
        waiting[other] = h;
        continue;
      }
      if (before < 0) waiting[other] = next[partner];
      else next[before] = next[partner];
      twin[h] = partner;
      twin[partner] = h;
    }
    for (let i = start[v]; i < start[v + 1]; i++) {
      const h = list[i];
      waiting[triangles[h] === v ? triangles[following(h)] : triangles[h]] = -1;
      if (twin[h] < 0) open++;
    }
  }
  return { twin, open };
}

/** The half-edge after `h` in its triangle. */
export function following(h: number): number {
  return h % 3 === 2 ? h - 2 : h + 1;
}

/** Whether the triangle of half-edge `h` has shrunk to a line: its neighbours then meet directly. */
function isLine(triangles: Uint32Array, h: number): boolean {
  const t = h - (h % 3);
  const a = triangles[t];
  const b = triangles[t + 1];
  const c = triangles[t + 2];
  return a === b || b === c || c === a;
}
