import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';

export const pittingResistance = calculation({
  name: 'pitting-resistance',
  title: 'Pitting resistance equivalent of a stainless steel (PREN)',
  inputs: {
    chromium_pct: number('Cr', 'chromium', '%', { min: 0, max: 40 }),
    molybdenum_pct: number('Mo', 'molybdenum', '%', {
      default: 0,
      min: 0,
      max: 20,
      from: 'none when left empty',
    }),
    nitrogen_pct: number('N', 'nitrogen', '%', {
      default: 0,
      min: 0,
      max: 1.5,
      from: 'none when left empty',
    }),
  },
  outputs: { pren: { symbol: 'PREN', label: 'pitting resistance equivalent', unit: '1' } },
  equation: ['PREN = Cr + 3.3 Mo + 16 N, in percent by mass'],
  validity:
    'Ranks stainless steels among each other. Finish, welds, crevices and temperature decide as much.',
  source: 'Common formula; factor 16 for nitrogen (others use 30 for duplex steels)',
  example: {
    inputs: { chromium_pct: 16.5, molybdenum_pct: 2.1, nitrogen_pct: 0.05 },
    expected: { pren: 24.2 },
    tolerance: 2e-3,
    source: 'check value M-02',
  },
  compute({ chromium_pct, molybdenum_pct, nitrogen_pct }) {
    return { values: { pren: chromium_pct + 3.3 * molybdenum_pct + 16 * nitrogen_pct } };
  },
});
