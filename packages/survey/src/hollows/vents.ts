/** Vents that the columns of the air space are too coarse for: passages from a hollow to elsewhere. */
import type { AirSpace } from '../liquid/air-space.ts';
import type { Region } from '../liquid/regions.ts';
import { sealedIn } from '../sealed.ts';
import type { Passage } from './passages.ts';
import { pointAt, radiusAt } from './passages.ts';

/** Diameter of the widest passage that is open at both ends, and has one of them in the hollow; 0 for none, mm. */
export function ventOf(air: Pick<AirSpace, 'soup'>, region: Region, passages: readonly Passage[]): number {
  const isInside = sealedIn({ soup: air.soup, hollows: [region] });
  let widest = 0;
  for (const passage of passages) {
    const { direction, low, high } = passage;
    if (low.closedBy !== undefined || high.closedBy !== undefined) continue;
    const [dx, dy, dz] = direction;
    const isIn = [
      isInside(...pointAt(passage, low.at), -dx, -dy, -dz),
      isInside(...pointAt(passage, high.at), dx, dy, dz),
    ];
    if (isIn[0] !== isIn[1]) widest = Math.max(widest, 2 * radiusAt(passage, low.at));
  }
  return widest;
}
