import type { Around } from './axis.ts';
import type { Round } from './rounds.ts';

/** A round stem that stands out of one end of a head. */
export interface Shank {
  readonly radius_mm: number;
  /** At the head, and its far end, mm along the axis. */
  readonly at: number;
  readonly end: number;
  /** 1 where it runs in the direction of the axis. */
  readonly side: 1 | -1;
}

/** Of the head's half width: an M3 socket head screw has 0.55, a hexagon bolt 0.6, a stud in its own head nearly 1. */
const widthRange = [0.25, 0.93] as const;

/**
 * The longest cylinder out of either end of a head that lies between `from` and `to` along the axis. `half_mm`: half
 * width of the head. A washer face or a collar, shorter than half its own radius, is none.
 */
export function shanksOf(
  near: Around,
  rounds: readonly Round[],
  head: { readonly from: number; readonly to: number; readonly half_mm: number },
): Shank[] {
  return ([1, -1] as const).flatMap((side) => {
    const face = side > 0 ? head.to : head.from;
    const stems = rounds.filter(
      (r) =>
        !r.hollow &&
        r.radius_mm > widthRange[0] * head.half_mm &&
        r.radius_mm < widthRange[1] * head.half_mm &&
        r.to - r.from > 0.5 * r.radius_mm &&
        // It begins in or near the head, and most of it stands out.
        Math.abs((side > 0 ? r.from : r.to) - face) < 0.8 * head.half_mm &&
        (side > 0 ? r.to - face : face - r.from) > 0.5 * (r.to - r.from),
    );
    const [longest] = stems.sort((a, b) => b.to - b.from - (a.to - a.from));
    if (!longest) return [];
    // A washer face or a chamfer between the flats and the stem belongs to the head.
    const at = side > 0 ? Math.max(face, longest.from) : Math.min(face, longest.to);
    return [{ radius_mm: longest.radius_mm, at, end: farEnd(near, longest, side), side }];
  });
}

/** Where a cylinder ends with its chamfer or point: the last vertex within its radius, up to half a diameter beyond it. */
function farEnd({ corners: c }: Around, { radius_mm, from, to }: Round, side: 1 | -1): number {
  let end = side > 0 ? to : from;
  const limit = end + side * radius_mm;
  for (let i = 0; i < c.length; i += 3) {
    const z = c[i + 2];
    if ((z - end) * side <= 0 || (z - limit) * side > 0) continue;
    if (Math.hypot(c[i], c[i + 1]) <= 1.02 * radius_mm) end = z;
  }
  return end;
}
