import { calculation } from '../calculation/calculation.ts';
import { choice, number } from '../calculation/inputs.ts';

/** ISO 14644-1:2015, table A.1, from memory: area up to (m2), number of locations. */
const tableA1: readonly (readonly [number, number])[] = [
  [2, 1],
  [4, 2],
  [6, 3],
  [8, 4],
  [10, 5],
  [24, 6],
  [28, 7],
  [32, 8],
  [36, 9],
  [52, 10],
  [56, 11],
  [64, 12],
  [68, 13],
  [72, 14],
  [76, 15],
  [104, 16],
  [108, 17],
  [116, 18],
  [148, 19],
  [156, 20],
  [192, 21],
  [232, 22],
  [276, 23],
  [352, 24],
  [436, 25],
  [636, 26],
  [1000, 27],
];

export const isoLocations = calculation({
  name: 'iso-sampling-locations',
  title: 'Number of sampling locations of a cleanroom (ISO 14644-1)',
  inputs: {
    area: number('A', 'floor area', 'm2', { min: 0.1, max: 1e5 }),
    edition: choice(
      'edition',
      { 2015: '2015, table A.1 (from memory)', 1999: '1999, square root of the area' },
      { default: '2015' },
    ),
  },
  outputs: {
    locations: { symbol: 'N_L', label: 'locations', unit: '1' },
    squareRoot: { symbol: 'N_99', label: 'locations by the 1999 edition', unit: '1' },
  },
  equation: ['2015: table A.1; above 1000 m2 N_L = 27 A/1000', '1999: N_L = square root of A, rounded up'],
  validity:
    'One room or clean zone. Add locations where the risk asks for it. The square root is not the rule of the 2015 edition.',
  source: 'ISO 14644-1:2015, table A.1 (from memory); ISO 14644-1:1999, B.4.1.1',
  example: {
    inputs: { area: 64 },
    expected: { locations: 12, squareRoot: 8 },
    tolerance: 1e-12,
    source: 'known difference of the editions: 12 against 8 locations at 64 m2',
  },
  compute({ area, edition }) {
    const row = tableA1.find(([upTo]) => area <= upTo);
    const newer = row ? row[1] : Math.ceil((27 * area) / 1000);
    const squareRoot = Math.ceil(Math.sqrt(area));
    return {
      values: { locations: edition === '2015' ? newer : squareRoot, squareRoot },
      warnings:
        edition === '2015'
          ? ['The table is from memory: check it against the standard.']
          : ['The 1999 edition is withdrawn.'],
    };
  },
});
