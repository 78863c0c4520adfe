import type { Vec3 } from '@coveline/model';

type Box = readonly [Vec3, Vec3];

/** Calls back for every pair of boxes that overlap, by a sweep along x; always in the same order, the lower index first. */
export function closePairs(boxes: readonly Box[], found: (a: number, b: number) => void): void {
  const order = boxes.map((_, i) => i).sort((a, b) => boxes[a][0][0] - boxes[b][0][0] || a - b);
  let active: number[] = [];
  for (const i of order) {
    const [low, high] = boxes[i];
    active = active.filter((k) => boxes[k][1][0] >= low[0]);
    for (const k of active) {
      const [l, h] = boxes[k];
      if (l[1] <= high[1] && h[1] >= low[1] && l[2] <= high[2] && h[2] >= low[2])
        found(Math.min(i, k), Math.max(i, k));
    }
    active.push(i);
  }
}
