import { type Placement, transformPoint, type Vec3 } from '@coveline/model';
import type { Sealed } from '../sealed.ts';
import { type Material, partAt } from '../tree/inside.ts';
import type { CornerLine } from './corner.ts';

/** Distance between the points at which a line is looked at; where it goes under cover is then found by halving. */
const stepLength_mm = 2;
const halvings = 12;

/** What of a line lies in the open, in the frame of the model. */
export interface Exposed {
  readonly pieces: readonly Float64Array[];
  /** Of the pieces, and of the whole line, mm. */
  readonly length_mm: number;
  readonly whole_mm: number;
}

/**
 * The stretches of a placed corner line beside which there is air: a point `lift_mm` off the line into the corner
 * lies in no part's material, and the air there is not sealed off.
 */
export function exposeLine(
  material: Material,
  placement: Placement,
  line: CornerLine,
  lift_mm: number,
  sealed: Sealed,
): Exposed {
  const { points, air } = line;
  const pieces: Float64Array[] = [];
  let piece: number[] = [];
  let length_mm = 0;
  let whole_mm = 0;
  const finish = () => {
    if (piece.length >= 6) pieces.push(Float64Array.from(piece));
    piece = [];
  };
  for (let i = 3; i < points.length; i += 3) {
    const from = vec(points, i - 3);
    const to = vec(points, i);
    const length = Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]);
    if (length === 0) continue;
    whole_mm += length;
    const isOpen = (s: number): boolean => {
      const [x, y, z] = transformPoint(placement, [
        mix(from[0], to[0], s) + lift_mm * mix(air[i - 3], air[i], s),
        mix(from[1], to[1], s) + lift_mm * mix(air[i - 2], air[i + 1], s),
        mix(from[2], to[2], s) + lift_mm * mix(air[i - 1], air[i + 2], s),
      ]);
      if (partAt(material, x, y, z) >= 0) return false;
      const [bx, by, bz] = placedAt(placement, from, to, s);
      return !sealed(bx, by, bz, (x - bx) / lift_mm, (y - by) / lift_mm, (z - bz) / lift_mm);
    };
    for (const [a, b] of openSpans(isOpen, length)) {
      if (a > 0) finish();
      if (piece.length === 0) piece.push(...placedAt(placement, from, to, a));
      piece.push(...placedAt(placement, from, to, b));
      length_mm += (b - a) * length;
      if (b < 1) finish();
    }
    if (!isOpen(1 - inset(length))) finish();
  }
  finish();
  return { pieces, length_mm, whole_mm };
}

/** The ends of a line lie in the corner of three surfaces, where the question has no clear answer: look a bit inside. */
function inset(length: number): number {
  return Math.min(0.25, 0.1 / length);
}

function openSpans(isOpen: (s: number) => boolean, length: number): [number, number][] {
  const e = inset(length);
  const steps = Math.max(1, Math.ceil(length / stepLength_mm));
  const at = (k: number) => (k === 0 ? 0 : k === steps ? 1 : k / steps);
  const look = (s: number) => isOpen(Math.min(1 - e, Math.max(e, s)));
  const spans: [number, number][] = [];
  let before = look(0);
  let start = 0;
  for (let k = 1; k <= steps; k++) {
    const now = look(at(k));
    if (now === before) continue;
    let low = at(k - 1);
    let high = at(k);
    for (let n = 0; n < halvings; n++) {
      const middle = (low + high) / 2;
      if (look(middle) === before) low = middle;
      else high = middle;
    }
    if (before) spans.push([start, (low + high) / 2]);
    else start = (low + high) / 2;
    before = now;
  }
  if (before) spans.push([start, 1]);
  return spans;
}

function mix(a: number, b: number, s: number): number {
  return a + (b - a) * s;
}

function vec(p: Float64Array, i: number): Vec3 {
  return [p[i], p[i + 1], p[i + 2]];
}

function placedAt(placement: Placement, a: Vec3, b: Vec3, s: number): Vec3 {
  return transformPoint(placement, [mix(a[0], b[0], s), mix(a[1], b[1], s), mix(a[2], b[2], s)]);
}
