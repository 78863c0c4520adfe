import type { Sealed } from '../sealed.ts';
import { partNear } from '../tree/whereabouts.ts';
import type { Eye } from './look.ts';
import type { Segment } from './region.ts';

/** Looks beside a border go this many contact distances off. */
const beside = 2.5;

/** Whether there is air, not sealed off, beside a border, on this or on the other side of the wall's own plane. */
export function isOpen(eye: Eye, segment: Segment, sealed: Sealed): boolean {
  return isAir(eye, segment, 1, sealed) || isAir(eye, segment, -1, sealed);
}

/** Whether there is air on both sides of the wall's own plane: nothing stands out beside the joint. */
export function isFlush(eye: Eye, segment: Segment, sealed: Sealed): boolean {
  return isAir(eye, segment, 1, sealed) && isAir(eye, segment, -1, sealed);
}

function isAir(
  { whereabouts, contact_mm }: Eye,
  { a, b, outward: u, normal: n }: Segment,
  side: 1 | -1,
  sealed: Sealed,
): boolean {
  const d = beside * contact_mm;
  const at = (k: number) => (a[k] + b[k]) / 2 + d * (u[k] + side * n[k]);
  const x = at(0);
  const y = at(1);
  const z = at(2);
  if (partNear(whereabouts, x, y, z) >= 0) return false;
  const into = (k: number) => Math.SQRT1_2 * (u[k] + side * n[k]);
  return !sealed(x, y, z, into(0), into(1), into(2));
}
