import { calculation, refuse } from '../calculation/calculation.ts';
import { choice, number } from '../calculation/inputs.ts';

type Shape = 'slot' | 'square' | 'round';

/** ISO 13857, table 4 (secondary copy): opening up to, mm; safety distance for slot, square, round, mm. */
const table4: readonly (readonly [number, Readonly<Record<Shape, number>>])[] = [
  [4, { slot: 2, square: 2, round: 2 }],
  [6, { slot: 10, square: 5, round: 5 }],
  [8, { slot: 20, square: 15, round: 5 }],
  [10, { slot: 80, square: 25, round: 20 }],
  [12, { slot: 100, square: 80, round: 80 }],
  [20, { slot: 120, square: 120, round: 120 }],
  [30, { slot: 850, square: 120, round: 120 }],
  [40, { slot: 850, square: 200, round: 120 }],
  [120, { slot: 850, square: 850, round: 850 }],
];

export const reachDistance = calculation({
  name: 'reach-through-opening',
  title: 'Safety distance behind an opening in a guard (ISO 13857)',
  inputs: {
    opening_mm: number('e', 'smaller dimension of the opening', 'mm', { min: 0, max: 1000 }),
    shape: choice('shape', { slot: 'slot', square: 'square', round: 'round' }, { default: 'slot' }),
    slotLength_mm: number('l', 'length of a slot', 'mm', {
      default: 1000,
      min: 0,
      max: 1e5,
      from: 'so long that only its width counts',
    }),
  },
  outputs: { distance_mm: { symbol: 'sr', label: 'safety distance', unit: 'mm' } },
  equation: [
    'table 4 of the standard by opening and shape; slots of 20 to 30 mm that are at most 65 mm long: 200 mm',
  ],
  validity:
    'Upper limbs of persons of 14 years and above, openings up to 120 mm. Wider openings ask for the reach-over tables or a guard.',
  source: 'EN ISO 13857, table 4 (secondary copy)',
  example: {
    inputs: { opening_mm: 5, shape: 'round' },
    expected: { distance_mm: 5 },
    tolerance: 0,
    source: 'check values E-01-4_6 and E-05',
  },
  caution: 'Moving parts maim: a competent person must judge the guard with the standard in force.',
  compute({ opening_mm, shape, slotLength_mm }) {
    const row = table4.find(([upTo]) => opening_mm <= upTo);
    if (row === undefined)
      return refuse(
        `An opening of ${opening_mm} mm lets the whole arm or body through: table 4 ends at 120 mm`,
      );
    const short = shape === 'slot' && opening_mm > 20 && opening_mm <= 30 && slotLength_mm <= 65;
    return { values: { distance_mm: short ? 200 : row[1][shape] } };
  },
});
