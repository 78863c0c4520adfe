import type { Tree } from './tree.ts';

/** Lowest and highest xyz of every part, six numbers each, mm; infinite the wrong way round for a part without triangles. */
export function partBoxes({ start, slotOf, corners }: Tree): Float64Array {
  const parts = start.length - 1;
  const boxes = new Float64Array(parts * 6);
  for (let p = 0; p < parts; p++) {
    boxes.fill(Infinity, p * 6, p * 6 + 3).fill(-Infinity, p * 6 + 3, p * 6 + 6);
    for (let t = start[p]; t < start[p + 1]; t++) growByTriangle(boxes, p * 6, corners, slotOf[t]);
  }
  return boxes;
}

/** Widens the box at `at` by the triangle in `slot`. */
export function growByTriangle(boxes: Float64Array, at: number, corners: Float64Array, slot: number): void {
  for (let i = 0; i < 9; i++) {
    const c = corners[slot * 9 + i];
    const axis = at + (i % 3);
    if (c < boxes[axis]) boxes[axis] = c;
    if (c > boxes[axis + 3]) boxes[axis + 3] = c;
  }
}

/** Whether two boxes come within `reach` of each other along every axis. */
export function boxesMeet(
  a: Float64Array,
  atA: number,
  b: Float64Array,
  atB: number,
  reach: number,
): boolean {
  for (let k = 0; k < 3; k++) {
    if (a[atA + k] > b[atB + 3 + k] + reach || b[atB + k] > a[atA + 3 + k] + reach) return false;
  }
  return true;
}
