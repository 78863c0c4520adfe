import type { EdgeUse } from './edge-use.ts';
import type { Shells } from './shells.ts';

/**
 * Turns single triangles in place so that neighbours agree, in open shells where no edge has more than two uses.
 * Returns in how many shells something was turned.
 */
export function orientShells(triangles: Uint32Array, uses: EdgeUse, { ofTriangle, open }: Shells): number {
  const count = triangles.length / 3;
  const firstOfEdge = new Int32Array(uses.count).fill(-1);
  const secondOfEdge = new Int32Array(uses.count).fill(-1);
  const branching = new Uint8Array(open.length);
  for (let c = 0; c < triangles.length; c++) {
    const e = uses.ofCorner[c];
    const t = (c / 3) | 0;
    if (uses.low[e] === uses.high[e]) continue;
    if (firstOfEdge[e] < 0) firstOfEdge[e] = t;
    else if (secondOfEdge[e] < 0) secondOfEdge[e] = t;
    else branching[ofTriangle[t]] = 1;
  }
  const state = new Int8Array(count);
  const turned = new Uint8Array(open.length);
  const stack: number[] = [];
  for (let seed = 0; seed < count; seed++) {
    const shell = ofTriangle[seed];
    if (state[seed] !== 0 || !open[shell] || branching[shell]) continue;
    state[seed] = 1;
    stack.push(seed);
    while (stack.length > 0) {
      const t = stack.pop() as number;
      for (let k = 0; k < 3; k++) {
        const e = uses.ofCorner[t * 3 + k];
        const other = firstOfEdge[e] === t ? secondOfEdge[e] : firstOfEdge[e];
        if (other < 0 || other === t || state[other] !== 0) continue;
        // Two uses in one direction: the neighbour is wound the other way.
        const agrees = uses.forward[e] === uses.backward[e];
        state[other] = agrees ? state[t] : -state[t];
        stack.push(other);
      }
    }
  }
  for (let t = 0; t < count; t++) {
    if (state[t] >= 0) continue;
    const second = triangles[t * 3 + 1];
    triangles[t * 3 + 1] = triangles[t * 3 + 2];
    triangles[t * 3 + 2] = second;
    turned[ofTriangle[t]] = 1;
  }
  return turned.reduce((n, f) => n + f, 0);
}
