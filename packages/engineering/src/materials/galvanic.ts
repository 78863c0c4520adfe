import { calculation } from '../calculation/calculation.ts';
import { choice, number } from '../calculation/inputs.ts';

/** Order in the sea-water series, most noble first (common practice, from memory). */
const series = {
  stainless: 'passive stainless steel, titanium',
  nickelCopper: 'nickel-copper alloy',
  bronze: 'bronze',
  brass: 'brass',
  copper: 'copper',
  tin: 'lead, tin, solder',
  steel: 'unalloyed steel, cast iron',
  aluminium: 'aluminium',
  zinc: 'zinc, zinc-plated steel',
  magnesium: 'magnesium',
} as const;

export const galvanicPair = calculation({
  name: 'galvanic-pair',
  title: 'Two metals in wet contact: which one suffers',
  inputs: {
    first: choice('first metal', series),
    second: choice('second metal', series),
    firstArea_cm2: number('A_1', 'wet surface of the first metal', 'cm2', {
      default: 100,
      min: 1e-3,
      max: 1e9,
      from: 'equal surfaces',
    }),
    secondArea_cm2: number('A_2', 'wet surface of the second metal', 'cm2', {
      default: 100,
      min: 1e-3,
      max: 1e9,
      from: 'equal surfaces',
    }),
  },
  outputs: {
    steps: { symbol: 'n', label: 'steps apart in the series', unit: '1' },
    ratio: { symbol: 'A_c/A_a', label: 'noble over active surface', unit: '1' },
    verdict: {
      symbol: 'v',
      label: 'verdict',
      unit: '1',
      words: { 2: 'alike', 1: 'doubtful', 0: 'isolate' },
    },
  },
  equation: [
    'n = difference of the places in the sea-water series',
    'isolate: n >= 3, or n >= 1 with A_c/A_a above 10; alike: n = 0',
  ],
  validity:
    'An electrolyte wets both. The series ranks and gives no rate; a small active part on a large noble one is worst.',
  source: 'Sea-water galvanic series, order from memory; thresholds are common practice',
  example: {
    inputs: { first: 'stainless', second: 'zinc', firstArea_cm2: 1000, secondArea_cm2: 10 },
    expected: { steps: 8, ratio: 100, verdict: 0 },
    tolerance: 1e-12,
    source: 'check value M-13: isolate stainless steel from zinc-plated fasteners',
  },
  compute({ first, second, firstArea_cm2, secondArea_cm2 }) {
    const order = Object.keys(series);
    const a = order.indexOf(first);
    const b = order.indexOf(second);
    const steps = Math.abs(a - b);
    const ratio = steps === 0 ? 1 : a < b ? firstArea_cm2 / secondArea_cm2 : secondArea_cm2 / firstArea_cm2;
    const verdict = steps === 0 ? 2 : steps >= 3 || ratio > 10 ? 0 : 1;
    const active = series[a < b ? second : first];
    return {
      values: { steps, ratio, verdict },
      warnings: [
        ...(steps > 0 ? [`The active side is: ${active}.`] : []),
        ...(verdict === 0 ? ['Isolate the two, or make the active part of the noble metal.'] : []),
      ],
    };
  },
});
