import { climbExactly } from './climb.ts';
import { narrowestAlong } from './narrowest.ts';
import { exactClearance, exactlyIn, type ReachSpace } from './space.ts';
import { placeOf, type Widest } from './widest.ts';

const before = new Float64Array(3);
const behind = new Float64Array(3);

/** Radius of the largest ball through the narrowest step of a widest way, searched again with exact distances, mm. */
export function exactThroat(space: ReachSpace, { from, spot, spots }: Widest, throat: number): number {
  const { lattice } = space;
  placeOf(lattice, spot, spots, from[throat], before);
  placeOf(lattice, spot, spots, throat, behind);
  return narrowestAlong(
    exactlyIn(space),
    before,
    clearanceAt(space, before),
    behind,
    clearanceAt(space, behind),
  );
}

/** The same where the middles of the two cells were ample enough not to be looked at: through their roomiest points. */
export function climbedThroat(space: ReachSpace, { from, spot, spots }: Widest, throat: number): number {
  const { lattice } = space;
  const roomier = (cell: number, out: Float64Array): number => {
    if (spot[cell] < 0) return climbExactly(space, cell, out);
    placeOf(lattice, spot, spots, cell, out);
    return clearanceAt(space, out);
  };
  const room = roomier(from[throat], before);
  return narrowestAlong(exactlyIn(space), before, room, behind, roomier(throat, behind));
}

function clearanceAt(space: ReachSpace, [x, y, z]: Float64Array): number {
  return exactClearance(space, x, y, z);
}
