import { nameOf, sameDimension } from './dimension.ts';
import { type Unit, unitOf } from './unit.ts';

function matched(from: string, to: string): readonly [Unit, Unit] {
  const a = unitOf(from);
  const b = unitOf(to);
  if (!sameDimension(a.dimension, b.dimension))
    throw new Error(`${from} is ${nameOf(a.dimension)}, ${to} is ${nameOf(b.dimension)}: no conversion`);
  return [a, b];
}

/**
 * A value in another unit; temperatures are points on the scale: 80 degC is 353.15 K.
 * Throws when the units are unknown or of different dimension, which is a fault of the calling program.
 */
export function convert(value: number, from: string, to: string): number {
  if (from === to) return value;
  const [a, b] = matched(from, to);
  return (value * a.factor + a.zero - b.zero) / b.factor;
}

/** A difference in another unit: 18 degF are 10 K apart. Same as `convert` except for temperatures. */
export function convertDifference(value: number, from: string, to: string): number {
  if (from === to) return value;
  const [a, b] = matched(from, to);
  return (value * a.factor) / b.factor;
}
