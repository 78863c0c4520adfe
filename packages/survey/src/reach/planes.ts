import type { Vec3 } from '@coveline/model';
import type { Site } from '../site.ts';

/** Floor and walls: unit direction into the room and offset, four numbers each, mm from the lattice's corner. */
export type Planes = Float64Array;

export function planesOf(site: Site | undefined, floor_mm: number, corner: Vec3): Planes {
  const all: { at: Vec3; into: Vec3 }[] = [{ at: [corner[0], corner[1], floor_mm], into: [0, 0, 1] }];
  for (const { at_mm, into } of site?.walls ?? []) all.push({ at: at_mm, into });
  return Float64Array.from(
    all.flatMap(({ at, into }) => {
      const length = Math.hypot(...into);
      const [x, y, z] = into.map((c) => c / length);
      return [x, y, z, x * (at[0] - corner[0]) + y * (at[1] - corner[1]) + z * (at[2] - corner[2])];
    }),
  );
}

/** Distance to the nearest plane, below 0 behind one. */
export function planesAt(planes: Planes, x: number, y: number, z: number): number {
  let least = Infinity;
  for (let i = 0; i < planes.length; i += 4) {
    least = Math.min(least, planes[i] * x + planes[i + 1] * y + planes[i + 2] * z - planes[i + 3]);
  }
  return least;
}
