import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';

/** ISO 14644-1:2015, table 1 (secondary copy): particles per m3 at or above 0.1, 0.2, 0.3, 0.5, 1, 5 um. */
const sizes = [0.1, 0.2, 0.3, 0.5, 1, 5];
const table: Readonly<Record<number, readonly (number | null)[]>> = {
  1: [10, null, null, null, null, null],
  2: [100, 24, 10, null, null, null],
  3: [1000, 237, 102, 35, null, null],
  4: [10000, 2370, 1020, 352, 83, null],
  5: [100000, 23700, 10200, 3520, 832, null],
  6: [1000000, 237000, 102000, 35200, 8320, 293],
  7: [null, null, null, 352000, 83200, 2930],
  8: [null, null, null, 3520000, 832000, 29300],
  9: [null, null, null, 35200000, 8320000, 293000],
};

/** Particles per m3 of the printed table, or null where it prints none. */
export function isoTableLimit(isoClass: number, size_um: number): number | null {
  const column = sizes.indexOf(size_um);
  return column < 0 ? null : (table[isoClass]?.[column] ?? null);
}

export const isoClassLimit = calculation({
  name: 'iso-class-limit',
  title: 'Particle limit of a cleanroom class (ISO 14644-1)',
  inputs: {
    isoClass: number('N', 'ISO class, steps of 0.1 between whole classes', '1', { min: 1, max: 9 }),
    size_um: number('D', 'particle size, at or above', 'um', {
      default: 0.5,
      min: 0.1,
      max: 5,
      from: 'size by which clean rooms are usually named, ISO 14644-1',
    }),
  },
  outputs: {
    limit_1m3: { symbol: 'C', label: 'limit: the table where it prints one, else the formula', unit: '1/m3' },
    formula_1m3: { symbol: 'C_f', label: 'by the formula', unit: '1/m3' },
    sample_L: { symbol: 'V', label: 'smallest single sample', unit: 'L' },
  },
  equation: ['C_f = 10^N (0.1 um / D)^2.08', 'V = 20/C x 1000 L, not less than 2 L and not less than 1 min'],
  validity:
    'Classes 1 to 9, 0.1 to 5 um. The table governs for whole classes; the formula serves steps between. Edition 2015 prints no value for ISO 5 at 5 um (1999: 29).',
  source: 'ISO 14644-1:2015, table 1 (secondary copy) and annex E; formula of the 1999 edition',
  example: {
    inputs: { isoClass: 7, size_um: 0.5 },
    expected: { limit_1m3: 352000, formula_1m3: 351676 },
    tolerance: 2e-6,
    source: 'check value A-01-7',
  },
  compute({ isoClass, size_um }) {
    const formula = 10 ** isoClass * (0.1 / size_um) ** 2.08;
    const printed = isoTableLimit(isoClass, size_um);
    const limit = printed ?? formula;
    return {
      values: { limit_1m3: limit, formula_1m3: formula, sample_L: Math.max(2, 20000 / limit) },
      warnings: [
        ...(printed === null
          ? ['The table of the 2015 edition prints no value here; the formula is given.']
          : []),
        ...(Math.abs(isoClass * 10 - Math.round(isoClass * 10)) > 1e-9
          ? ['Classes are stated in steps of 0.1.']
          : []),
      ],
    };
  },
});
