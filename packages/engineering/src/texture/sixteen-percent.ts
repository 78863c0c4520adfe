import { calculation } from '../calculation/calculation.ts';
import { choice, list, number } from '../calculation/inputs.ts';

/** How many of the first 3, 6 and 12 values may exceed under the 16 % rule. */
const stages = [
  [3, 0],
  [6, 1],
  [12, 2],
] as const;

export const roughnessVerdict = calculation({
  name: 'roughness-rule',
  title: 'Do roughness readings meet an upper limit? (16 % rule, max rule)',
  inputs: {
    readings_um: list('R', 'readings in the order of measurement, at the roughest place', 'um', {
      minCount: 1,
      min: 0,
      max: 1000,
    }),
    limit_um: number('R_max', 'upper limit', 'um', {
      default: 0.8,
      min: 0.001,
      max: 1000,
      from: 'usual limit of food-contact steel, common practice',
    }),
    rule: choice(
      'rule',
      {
        sixteen: '16 % rule, the default of ISO 4288:1996',
        max: 'max rule, marked "max" there and the default of ISO 21920-3:2021 (from memory)',
      },
      { default: 'sixteen' },
    ),
  },
  outputs: {
    verdict: {
      symbol: 'ok',
      label: 'verdict',
      unit: '1',
      words: { 1: 'met', 0: 'not met', 0.5: 'not yet decided' },
    },
    exceed: { symbol: 'n_x', label: 'readings above the limit', unit: '1' },
    mean_um: { symbol: 'm', label: 'mean', unit: 'um' },
    meanPlus_um: { symbol: 'm + s', label: 'mean plus standard deviation', unit: 'um' },
    more: { symbol: 'k', label: 'further readings needed to decide', unit: '1' },
  },
  equation: [
    '16 %: met when the first reading is at most 70 % of the limit, or none of the first 3, at most 1 of the first 6, at most 2 of the first 12 exceed, or m + s <= limit (n >= 3)',
    'max: no reading exceeds',
  ],
  validity:
    'Readings at the place that looks roughest. The rule in force is that of the edition on the drawing.',
  source: 'ISO 4288:1996 (secondary copy); ISO 21920-3:2021 from memory',
  example: {
    inputs: { readings_um: [0.5, 0.9, 0.9], limit_um: 0.8 },
    expected: { verdict: 1, exceed: 2 },
    tolerance: 0,
    source: 'check value R-02: the first reading is at most 70 % of the limit (0.56)',
  },
  compute({ readings_um: r, limit_um, rule }) {
    const over = r.filter((value) => value > limit_um).length;
    const mean = r.reduce((a, b) => a + b, 0) / r.length;
    const deviation =
      r.length > 1 ? Math.sqrt(r.reduce((a, b) => a + (b - mean) ** 2, 0) / (r.length - 1)) : 0;
    const firstOver = (count: number) => r.slice(0, count).filter((value) => value > limit_um).length;
    let verdict = 0;
    let more = 0;
    if (rule === 'max') verdict = over === 0 ? 1 : 0;
    else if (
      r[0] <= 0.7 * limit_um * (1 + 1e-12) ||
      stages.some(([count, allowed]) => r.length >= count && firstOver(count) <= allowed) ||
      (r.length >= 3 && mean + deviation <= limit_um)
    )
      verdict = 1;
    else {
      const open = stages.find(([count, allowed]) => r.length < count && over <= allowed);
      if (open !== undefined) {
        verdict = 0.5;
        more = open[0] - r.length;
      }
    }
    return {
      values: { verdict, exceed: over, mean_um: mean, meanPlus_um: mean + deviation, more },
      warnings:
        rule === 'max' && verdict === 1
          ? ['The max rule asks for the whole surface: readings at a few places only support it.']
          : [],
    };
  },
});
