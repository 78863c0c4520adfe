/**
 * What a unit measures: exponents over the base units. Angle and money are kept apart from pure numbers on purpose,
 * so that a slope in percent is not taken for degrees and a price not for a count.
 */

export const baseNames = ['m', 'kg', 's', 'K', 'A', 'rad', 'money'] as const;
export type Dimension = readonly [number, number, number, number, number, number, number];

export const pureNumber: Dimension = [0, 0, 0, 0, 0, 0, 0];

export function times(a: Dimension, b: Dimension, power = 1): Dimension {
  return a.map((exponent, i) => exponent + power * b[i]) as unknown as Dimension;
}

export function sameDimension(a: Dimension, b: Dimension): boolean {
  return a.every((exponent, i) => exponent === b[i]);
}

const known: readonly (readonly [string, Dimension])[] = [
  ['a pure number', pureNumber],
  ['a length', [1, 0, 0, 0, 0, 0, 0]],
  ['an area', [2, 0, 0, 0, 0, 0, 0]],
  ['a volume', [3, 0, 0, 0, 0, 0, 0]],
  ['a mass', [0, 1, 0, 0, 0, 0, 0]],
  ['a time', [0, 0, 1, 0, 0, 0, 0]],
  ['a temperature', [0, 0, 0, 1, 0, 0, 0]],
  ['an angle', [0, 0, 0, 0, 0, 1, 0]],
  ['an amount of money', [0, 0, 0, 0, 0, 0, 1]],
  ['a speed', [1, 0, -1, 0, 0, 0, 0]],
  ['a flow', [3, 0, -1, 0, 0, 0, 0]],
  ['a mass flow', [0, 1, -1, 0, 0, 0, 0]],
  ['a pressure', [-1, 1, -2, 0, 0, 0, 0]],
  ['an energy', [2, 1, -2, 0, 0, 0, 0]],
  ['a power', [2, 1, -3, 0, 0, 0, 0]],
  ['a force', [1, 1, -2, 0, 0, 0, 0]],
  ['a surface tension', [0, 1, -2, 0, 0, 0, 0]],
  ['a viscosity', [-1, 1, -1, 0, 0, 0, 0]],
  ['a density or concentration', [-3, 1, 0, 0, 0, 0, 0]],
  ['a rate', [0, 0, -1, 0, 0, 0, 0]],
  ['a number per volume', [-3, 0, 0, 0, 0, 0, 0]],
  ['a flow per length', [2, 0, -1, 0, 0, 0, 0]],
  ['a heat flow per length', [1, 1, -3, 0, 0, 0, 0]],
  ['a heat transfer coefficient', [0, 1, -3, -1, 0, 0, 0]],
  ['a thermal conductivity', [1, 1, -3, -1, 0, 0, 0]],
];

/** "a length", or the base units where the dimension has no everyday name. */
export function nameOf(dimension: Dimension): string {
  const hit = known.find(([, d]) => sameDimension(d, dimension));
  if (hit) return hit[0];
  return `a quantity in ${baseNames
    .map((name, i) => (dimension[i] === 0 ? '' : dimension[i] === 1 ? name : `${name}${dimension[i]}`))
    .filter(Boolean)
    .join(' ')}`;
}
