/** Posts between a sloping floor and a sloping or level ceiling: cut so that they stand flush on both. */
import type { Shape3D } from 'replicad';
import { alongX, polygon, rod } from './solids.ts';

/** Height as a function of y: z = z0 + y * slope. */
export interface SlopedPlane {
  readonly z0: number;
  readonly slope: number;
}

export function level(z: number): SlopedPlane {
  return { z0: z, slope: 0 };
}

/**
 * A round post on (0, y) drawn at its true height, so that it is placed with a move along x only.
 */
export function postBetween(diameter: number, y: number, floor: SlopedPlane, ceiling: SlopedPlane): Shape3D {
  const zAt = (p: SlopedPlane, v: number): number => p.z0 + p.slope * v;
  const reach = diameter;
  const left = y - reach;
  const right = y + reach;
  const bottom = Math.min(zAt(floor, left), zAt(floor, right)) - 1;
  const top = Math.max(zAt(ceiling, left), zAt(ceiling, right)) + 1;
  const between = polygon([
    [left, zAt(floor, left)],
    [right, zAt(floor, right)],
    [right, zAt(ceiling, right)],
    [left, zAt(ceiling, left)],
  ]);
  return alongX(between, -reach, reach).intersect(rod(diameter, top - bottom, [0, y, bottom]));
}
