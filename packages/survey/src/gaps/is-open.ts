import type { Sealed } from '../sealed.ts';
import { partNear } from '../tree/whereabouts.ts';
import type { Eye } from './look.ts';
import type { Segment } from './region.ts';

/** Looks beside a border go this many contact distances off. */
const beside = 2.5;

/**
 * Whether there is air, not sealed off, beside a border, on this or on the other side of the wall's own plane. Beside
 * the line in which a round surface touches another the air is too low for such a look, but it is seen as a gap.
 */
export function isOpen(eye: Eye, segment: Segment, sealed: Sealed): boolean {
  if (segment.besideGap) return !isSealed(eye, segment, 1, sealed);
  return isAir(eye, segment, 1, sealed) || isAir(eye, segment, -1, sealed);
}

/** Whether there is air on both sides of the wall's own plane: nothing stands out beside the joint. */
export function isFlush(eye: Eye, segment: Segment, sealed: Sealed): boolean {
  return isAir(eye, segment, 1, sealed) && isAir(eye, segment, -1, sealed);
}

function isAir(eye: Eye, segment: Segment, side: 1 | -1, sealed: Sealed): boolean {
  const [x, y, z] = pointBeside(eye, segment, side);
  return partNear(eye.whereabouts, x, y, z) < 0 && !isSealed(eye, segment, side, sealed);
}

function isSealed(eye: Eye, segment: Segment, side: 1 | -1, sealed: Sealed): boolean {
  const { outward: u, normal: n } = segment;
  const [x, y, z] = pointBeside(eye, segment, side);
  const into = (k: number) => Math.SQRT1_2 * (u[k] + side * n[k]);
  return sealed(x, y, z, into(0), into(1), into(2));
}

function pointBeside({ contact_mm }: Eye, { a, b, outward: u, normal: n }: Segment, side: 1 | -1) {
  const d = beside * contact_mm;
  return [0, 1, 2].map((k) => (a[k] + b[k]) / 2 + d * (u[k] + side * n[k]));
}
