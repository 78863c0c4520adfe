import type { Soup } from '../soup.ts';
import type { Solid } from './solid.ts';

/** A closed shell that bounds material from outside, with its box in the turned frame. */
export interface OuterShell extends Solid {
  readonly low: readonly [number, number, number];
  readonly high: readonly [number, number, number];
}

/**
 * The closed shells of a part around which there is air. Those around its cavities are left out: nothing stands there
 * that could run anywhere. Each is a solid of its own, for a part may consist of bodies that overlap.
 */
export function outerShells({ uvz, triangles, part, sheet }: Soup, index: number): OuterShell[] {
  const start = lowerBound(part, index);
  const end = lowerBound(part, index + 1);
  const root = new Map<number, number>();
  const find = (v: number): number => {
    let r = v;
    for (let up = root.get(r); up !== undefined && up !== r; up = root.get(r)) r = up;
    for (let at = v; at !== r; ) {
      const up = root.get(at) as number;
      root.set(at, r);
      at = up;
    }
    return r;
  };
  for (let t = start; t < end; t++) {
    if (sheet[t]) continue;
    for (let c = 0; c < 3; c++)
      if (!root.has(triangles[t * 3 + c])) root.set(triangles[t * 3 + c], triangles[t * 3 + c]);
    const a = find(triangles[t * 3]);
    for (let c = 1; c < 3; c++) {
      const b = find(triangles[t * 3 + c]);
      if (a !== b) root.set(b, a);
    }
  }
  const corners = new Map<number, number[]>();
  for (let t = start; t < end; t++) {
    if (sheet[t]) continue;
    const shell = find(triangles[t * 3]);
    const list = corners.get(shell);
    if (list) list.push(triangles[t * 3], triangles[t * 3 + 1], triangles[t * 3 + 2]);
    else corners.set(shell, [triangles[t * 3], triangles[t * 3 + 1], triangles[t * 3 + 2]]);
  }
  return [...corners.values()].map((list) => shellOf(uvz, list)).filter((shell) => volumeOf(shell) > 0);
}

function shellOf(uvz: Float64Array, corners: readonly number[]): OuterShell {
  const number = new Map<number, number>();
  const triangles = new Uint32Array(corners.length);
  for (let c = 0; c < corners.length; c++) {
    let own = number.get(corners[c]);
    if (own === undefined) {
      own = number.size;
      number.set(corners[c], own);
    }
    triangles[c] = own;
  }
  const positions = new Float64Array(number.size * 3);
  const low: [number, number, number] = [Infinity, Infinity, Infinity];
  const high: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (const [v, own] of number) {
    for (let k = 0; k < 3; k++) {
      const c = uvz[v * 3 + k];
      positions[own * 3 + k] = c;
      if (c < low[k]) low[k] = c;
      if (c > high[k]) high[k] = c;
    }
  }
  return { positions, triangles, low, high };
}

function volumeOf({ positions: p, triangles }: Solid): number {
  const [ox, oy, oz] = p;
  let six = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const a = triangles[t] * 3;
    const b = triangles[t + 1] * 3;
    const c = triangles[t + 2] * 3;
    six +=
      (p[a] - ox) * ((p[b + 1] - oy) * (p[c + 2] - oz) - (p[b + 2] - oz) * (p[c + 1] - oy)) +
      (p[a + 1] - oy) * ((p[b + 2] - oz) * (p[c] - ox) - (p[b] - ox) * (p[c + 2] - oz)) +
      (p[a + 2] - oz) * ((p[b] - ox) * (p[c + 1] - oy) - (p[b + 1] - oy) * (p[c] - ox));
  }
  return six / 6;
}

/** First index whose value is not below `value` in an ascending array. */
export function lowerBound(sorted: Uint32Array, value: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle] < value) low = middle + 1;
    else high = middle;
  }
  return low;
}
