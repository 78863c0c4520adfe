/** Jars and lids: round, one shape each, used as often as the line needs them. */
import type { Shape3D } from 'replicad';
import { type Point2, turnedPart } from './solids.ts';

/** Outside of the jar; `mouth` is the inside diameter of its opening. */
export const jar = { diameter: 80, height: 95, wall: 2.5, mouth: 68 } as const;
export const lid = { diameter: 76, height: 14, wall: 0.6 } as const;

/** Inside of the jar from its floor up: (radius, height). */
const inside: readonly Point2[] = [
  [0, jar.wall],
  [jar.diameter / 2 - jar.wall - 6.5, jar.wall],
  [jar.diameter / 2 - jar.wall - 1.8, jar.wall + 2.4],
  [jar.diameter / 2 - jar.wall, jar.wall + 6],
  [jar.diameter / 2 - jar.wall, jar.height - 23],
  [jar.mouth / 2, jar.height - 15],
  [jar.mouth / 2, jar.height],
];

/** Stands on z = 0, wide open at the top. */
export function jarShape(): Shape3D {
  const { diameter, height, wall, mouth } = jar;
  const r = diameter / 2;
  const neck = mouth / 2 + wall;
  return turnedPart([
    [0, 0],
    [r - 3, 0],
    [r, 3],
    [r, height - 23],
    [neck, height - 15],
    [neck, height],
    ...inside.toReversed(),
  ]);
}

/** What a jar holds when it is full to the brim: frustums on top of one another. */
export function jarContent_mL(): number {
  let sum = 0;
  for (let i = 1; i < inside.length; i++) {
    const [a, low] = inside[i - 1];
    const [b, high] = inside[i];
    sum += (Math.PI * (high - low) * (a * a + a * b + b * b)) / 3;
  }
  return sum / 1000;
}

/** Its skirt ends at z = 0, closed at the top. */
export function lidShape(): Shape3D {
  const { diameter, height, wall } = lid;
  const r = diameter / 2;
  return turnedPart([
    [0, height - wall],
    [r - wall, height - wall],
    [r - wall, 0],
    [r, 0],
    [r, height],
    [0, height],
  ]);
}
