import type { Weld } from '../weld/weld.ts';
import type { CornerLine } from './corner.ts';
import type { RoundFrame } from './round.ts';

/** A piece of a round surface, measured on the true surface rather than on its triangles. */
export interface RoundPatch {
  /** How far it goes round the centre line, radians; 2 pi and nearly so for a whole bore. */
  readonly sweep: number;
  /** Mean length along the centre line at the surface: area / (radius sweep). */
  readonly length_mm: number;
  /** Along the middle of the patch. */
  readonly line: CornerLine;
}

const lineStep = Math.PI / 36;

/** Measures the triangles of a round face in its frame. */
export function measurePatch(weld: Weld, triangles: readonly number[], frame: RoundFrame): RoundPatch {
  const { positions: p, triangles: corners } = weld;
  const n = triangles.length * 3;
  const angles = new Float64Array(n);
  const places = new Float64Array(n);
  const at = new Float64Array(2);
  for (let i = 0; i < n; i++) {
    const v = corners[triangles[(i / 3) | 0] * 3 + (i % 3)] * 3;
    frame.locate(p[v], p[v + 1], p[v + 2], at);
    angles[i] = at[0];
    places[i] = at[1];
  }
  const around = span(angles, 2 * Math.PI);
  const along = span(places, frame.period);
  const sweep = around.length;
  return {
    sweep,
    length_mm: trueArea(angles, places, frame) / (frame.radius_mm * sweep),
    line: midLine(frame, around.from + sweep / 2, along),
  };
}

/** The shortest stretch that holds all values; on a circle when `period` is not 0. */
function span(values: Float64Array, period: number): { from: number; length: number } {
  const sorted = values.slice().sort();
  const first = sorted[0];
  const last = sorted[sorted.length - 1];
  if (period === 0) return { from: first, length: last - first };
  let gap = first + period - last;
  let from = first;
  for (let i = 1; i < sorted.length; i++) {
    if (sorted[i] - sorted[i - 1] <= gap) continue;
    gap = sorted[i] - sorted[i - 1];
    from = sorted[i];
  }
  return { from, length: period - gap };
}

/** A difference on a circle, the short way round; unchanged when `period` is 0. */
function shortWay(d: number, period: number): number {
  return period === 0 ? d : d - period * Math.round(d / period);
}

function trueArea(angles: Float64Array, places: Float64Array, frame: RoundFrame): number {
  let area = 0;
  for (let i = 0; i < angles.length; i += 3) {
    const a1 = shortWay(angles[i + 1] - angles[i], 2 * Math.PI);
    const a2 = shortWay(angles[i + 2] - angles[i], 2 * Math.PI);
    const p1 = shortWay(places[i + 1] - places[i], frame.period);
    const p2 = shortWay(places[i + 2] - places[i], frame.period);
    const middle = angles[i] + (a1 + a2) / 3;
    area += (Math.abs(a1 * p2 - a2 * p1) / 2) * frame.radius_mm * frame.stretch(middle);
  }
  return area;
}

function midLine(frame: RoundFrame, angle: number, along: { from: number; length: number }): CornerLine {
  // A circle that is closed up to one step of its triangles is drawn closed.
  const whole = frame.period > 0 && along.length > frame.period * 0.9;
  const length = whole ? frame.period : along.length;
  const steps = frame.period > 0 ? Math.max(1, Math.ceil(length / lineStep)) : 1;
  const points = new Float64Array((steps + 1) * 3);
  const air = new Float64Array((steps + 1) * 3);
  for (let i = 0; i <= steps; i++) {
    frame.point(
      angle,
      along.from + (length * i) / steps,
      points.subarray(i * 3, i * 3 + 3),
      air.subarray(i * 3, i * 3 + 3),
    );
  }
  return { points, air };
}
