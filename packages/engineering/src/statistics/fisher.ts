import { calculation, refuse } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { logGamma } from '../numeric/special.ts';

const logChoose = (n: number, k: number) => logGamma(n + 1) - logGamma(k + 1) - logGamma(n - k + 1);

export const fisherExact = calculation({
  name: 'compare-two-rates',
  title: "Do two cleaning variants differ in positives? (Fisher's exact test)",
  inputs: {
    positivesA: number('a', 'positives of variant A', '1', { min: 0, max: 1e5, whole: true }),
    testedA: number('n_A', 'tested of variant A', '1', { min: 1, max: 1e5, whole: true }),
    positivesB: number('b', 'positives of variant B', '1', { min: 0, max: 1e5, whole: true }),
    testedB: number('n_B', 'tested of variant B', '1', { min: 1, max: 1e5, whole: true }),
  },
  outputs: {
    twoSided: { symbol: 'p', label: 'two-sided probability', unit: '1' },
    aBelow: { symbol: 'p_1', label: 'one-sided probability that A is not better than B', unit: '1' },
    rateA: { symbol: 'r_A', label: 'rate of A', unit: '1' },
    rateB: { symbol: 'r_B', label: 'rate of B', unit: '1' },
  },
  equation: [
    'P(x) = C(n_A, x) C(n_B, k - x)/C(n_A + n_B, k), k = a + b',
    'p: sum of P(x) not above P(a); p_1: sum of P(x), x <= a',
  ],
  validity: 'Independent units, variants drawn by chance. No difference shown is not a proof of equality.',
  source: 'R. A. Fisher, Statistical Methods for Research Workers (1934), 21.02',
  example: {
    // The lady tasting tea: 3 of 4 against 1 of 4, two-sided 34/70.
    inputs: { positivesA: 3, testedA: 4, positivesB: 1, testedB: 4 },
    expected: { twoSided: 34 / 70, aBelow: 69 / 70 },
    tolerance: 1e-10,
    source: 'closed form: R. A. Fisher, The Design of Experiments (1935)',
  },
  compute({ positivesA: a, testedA: na, positivesB: b, testedB: nb }) {
    if (a > na || b > nb) return refuse('There are more positives than tested units');
    const k = a + b;
    const at = (x: number) => Math.exp(logChoose(na, x) + logChoose(nb, k - x) - logChoose(na + nb, k));
    const observed = at(a);
    let twoSided = 0;
    let below = 0;
    for (let x = Math.max(0, k - nb); x <= Math.min(na, k); x++) {
      const p = at(x);
      // Equal probabilities may differ in the last digits.
      if (p <= observed * (1 + 1e-7)) twoSided += p;
      if (x <= a) below += p;
    }
    return {
      values: { twoSided: Math.min(1, twoSided), aBelow: Math.min(1, below), rateA: a / na, rateB: b / nb },
    };
  },
});
