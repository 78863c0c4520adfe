import type { CornerLine } from './corner.ts';

/** One line of several end to end; a number below zero stands for the bitwise complement of one that runs backwards. */
export function joinLines(lines: readonly CornerLine[], order: readonly number[]): CornerLine {
  const points: number[] = [];
  const air: number[] = [];
  for (const step of order) {
    const line = lines[step < 0 ? ~step : step];
    const n = line.points.length / 3;
    for (let i = 0; i < n; i++) {
      // Both sides of a joint are kept, because the air may lie in slightly different directions there.
      const at = 3 * (step < 0 ? n - 1 - i : i);
      points.push(line.points[at], line.points[at + 1], line.points[at + 2]);
      air.push(line.air[at], line.air[at + 1], line.air[at + 2]);
    }
  }
  return { points: Float64Array.from(points), air: Float64Array.from(air) };
}
