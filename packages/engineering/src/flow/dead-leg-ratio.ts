import { calculation, refuse } from '../calculation/calculation.ts';
import { choice, number } from '../calculation/inputs.ts';

/** What each rule counts, and its limit as a multiple of the branch bore. */
const rules = {
  bpe: {
    fromAxis: false,
    limit: 2,
    words: 'ASME BPE target, from the inner wall of the main (datum from memory)',
  },
  sixFromAxis: { fromAxis: true, limit: 6, words: 'the old 6 D rule, from the axis of the main' },
  industry: { fromAxis: false, limit: 3, words: 'dairy and industry practice, 3 D, from the inner wall' },
  purifiedWater: {
    fromAxis: false,
    limit: 1.5,
    words: 'purified-water practice, 1.5 D, from the inner wall',
  },
  closedEquipment: {
    fromAxis: false,
    limit: 1,
    words: 'closed-equipment guidance, as short as possible and below 1 D (from memory)',
  },
};

export const deadLegRatio = calculation({
  name: 'dead-leg-ratio',
  title: "Dead leg: L/D by each rule's own datum",
  inputs: {
    rule: choice(
      'rule',
      {
        bpe: rules.bpe.words,
        sixFromAxis: rules.sixFromAxis.words,
        industry: rules.industry.words,
        purifiedWater: rules.purifiedWater.words,
        closedEquipment: rules.closedEquipment.words,
      },
      { default: 'bpe' },
    ),
    length_mm: number('L', 'length from the inner wall of the main to the closure', 'mm', {
      min: 0,
      max: 1e5,
    }),
    branch_mm: number('d', 'bore of the branch', 'mm', { min: 1, max: 1000 }),
    main_mm: number('D', 'bore of the main', 'mm', { min: 1, max: 2000 }),
  },
  outputs: {
    ratio: { symbol: 'L/D', label: "ratio by the rule's datum", unit: '1' },
    limit: { symbol: 'lim', label: 'limit of the rule', unit: '1' },
    fromWall: { symbol: 'L_w/d', label: 'ratio from the inner wall', unit: '1' },
    fromAxis: { symbol: 'L_a/d', label: 'ratio from the axis', unit: '1' },
    allowed_mm: {
      symbol: 'L_max',
      label: 'longest branch from the inner wall that keeps to the rule',
      unit: 'mm',
    },
  },
  equation: ['L_w/d = L/d', 'L_a/d = (L + D/2)/d', 'L_max = lim d, for rules from the axis lim d - D/2'],
  validity:
    'Geometry only: orientation, flow into the branch and drainability count too, and no ratio proves cleanability.',
  source: 'ASME BPE, industry and purified-water practice (secondary copies); see the table of rules',
  example: {
    inputs: { rule: 'sixFromAxis', length_mm: 275, branch_mm: 50, main_mm: 50 },
    expected: { ratio: 6, fromWall: 5.5, allowed_mm: 275 },
    tolerance: 1e-12,
    source: 'check value H-34: 6 D from the axis are 5.5 D from the wall for equal bores',
  },
  compute({ rule, length_mm, branch_mm, main_mm }) {
    if (branch_mm > main_mm) return refuse('The branch is wider than the main: exchange the two bores');
    const { fromAxis: axis, limit } = rules[rule];
    const fromWall = length_mm / branch_mm;
    const fromAxis = (length_mm + main_mm / 2) / branch_mm;
    const ratio = axis ? fromAxis : fromWall;
    return {
      values: {
        ratio,
        limit,
        fromWall,
        fromAxis,
        allowed_mm: Math.max(0, limit * branch_mm - (axis ? main_mm / 2 : 0)),
      },
      warnings: ratio > limit ? [`Longer than the rule allows: ${ratio.toFixed(2)} against ${limit}.`] : [],
    };
  },
});
