import type { AccessSide, Site } from '../site.ts';
import type { Facets } from './facets.ts';

/** Per side four numbers: unit direction outwards and offset of the plane that the machine touches, mm from the lattice's corner. */
export type Access = Float64Array;

/** Where nothing is said, a person can stand on every side, and nothing is reached from below. */
const anySide: readonly AccessSide[] = [
  { id: '-x', outward: [-1, 0, 0] },
  { id: '+x', outward: [1, 0, 0] },
  { id: '-y', outward: [0, -1, 0] },
  { id: '+y', outward: [0, 1, 0] },
  { id: '+z', outward: [0, 0, 1] },
];

/** The sides from which hand and tool come: each begins where the machine ends in that direction, its doors open. */
export function accessOf(site: Site | undefined, { corners, count }: Facets): Access {
  const sides = site?.access.length ? site.access : anySide;
  return Float64Array.from(
    sides.flatMap(({ outward }) => {
      const length = Math.hypot(...outward);
      const [x, y, z] = outward.map((c) => c / length);
      let support = -Infinity;
      for (let i = 0; i < count * 9; i += 3) {
        support = Math.max(support, x * corners[i] + y * corners[i + 1] + z * corners[i + 2]);
      }
      return [x, y, z, support];
    }),
  );
}

/** How far a point lies beyond the machine on the access side where it lies farthest out; below 0 inside. */
export function outsideBy(access: Access, x: number, y: number, z: number): number {
  let most = -Infinity;
  for (let i = 0; i < access.length; i += 4) {
    most = Math.max(most, access[i] * x + access[i + 1] * y + access[i + 2] * z - access[i + 3]);
  }
  return most;
}

/** The part of the straight line from one point to another that lies beyond one access side, 0 to 1. */
export function outsideShare(access: Access, from: Float64Array, to: Float64Array): number {
  let most = 0;
  for (let i = 0; i < access.length; i += 4) {
    const out = (p: Float64Array) =>
      access[i] * p[0] + access[i + 1] * p[1] + access[i + 2] * p[2] - access[i + 3];
    const a = out(from);
    const b = out(to);
    if (a > 0) most = Math.max(most, b >= 0 ? 1 : a / (a - b));
  }
  return most;
}
