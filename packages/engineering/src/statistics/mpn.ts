import { calculation, refuse } from '../calculation/calculation.ts';
import { list, number } from '../calculation/inputs.ts';
import { bisect } from '../numeric/root.ts';
import { logGamma, normalQuantile } from '../numeric/special.ts';

const logChoose = (n: number, k: number) => logGamma(n + 1) - logGamma(k + 1) - logGamma(n - k + 1);

export const mostProbableNumber = calculation({
  name: 'most-probable-number',
  title: 'Most probable number from tubes with and without growth',
  inputs: {
    volumes_g: list('v', 'sample in a tube of each dilution', 'g', { minCount: 1, min: 1e-12 }),
    tubes: list('n', 'tubes of each dilution', '1', { minCount: 1, min: 1 }),
    positives: list('x', 'tubes with growth', '1', { minCount: 1, min: 0 }),
    confidence_pct: number('c', 'confidence', '%', {
      default: 95,
      min: 50,
      max: 99.99,
      from: 'common practice',
    }),
  },
  outputs: {
    mpn_1g: { symbol: 'MPN', label: 'most probable number', unit: '1/g' },
    low_1g: { symbol: 'MPN_l', label: 'lower limit', unit: '1/g' },
    high_1g: { symbol: 'MPN_u', label: 'upper limit', unit: '1/g' },
    error: { symbol: 's', label: 'standard error of log10 MPN, observed information', unit: '1' },
    expectedError: { symbol: 's_e', label: 'the same from the expected information', unit: '1' },
    thomas_1g: { symbol: 'MPN_T', label: 'approximation of Thomas', unit: '1/g' },
    likelihood: { symbol: 'L', label: 'probability of this outcome at the MPN', unit: '1' },
  },
  equation: [
    'sum x v / (1 - exp(-m v)) = sum n v, solved for m',
    's = 1/(m ln 10 sqrt(J)), J = sum x v^2 exp(-m v)/(1 - exp(-m v))^2; limits 10^(log10 m -+ z s)',
    'Thomas: sum x / sqrt(v of the tubes without growth x v of all tubes)',
  ],
  validity:
    'Random spread, one organism is enough for growth. When no or every tube shows growth there is no estimate, only a limit.',
  source: 'H. O. Halvorson, N. R. Ziegler (1933); H. A. Thomas (1942); limits as in FDA BAM appendix 2',
  example: {
    inputs: { volumes_g: [0.1, 0.01, 0.001], tubes: [10, 10, 10], positives: [5, 3, 0] },
    expected: {
      mpn_1g: 9.95077,
      thomas_1g: 9.97044,
      likelihood: 0.0079637,
      error: 0.1574875,
      expectedError: 0.1658975,
    },
    tolerance: 5e-5,
    source: 'check values S-08 and S-09',
  },
  compute({ volumes_g: v, tubes: n, positives: x, confidence_pct }) {
    if (v.length !== n.length || v.length !== x.length)
      return refuse('Give one number of tubes and one of positives for each dilution');
    if (x.some((value, i) => value > n[i] || !Number.isInteger(value) || !Number.isInteger(n[i])))
      return refuse('The positives must be whole numbers not above the number of tubes');
    const all = n.reduce((sum, ni, i) => sum + ni * v[i], 0);
    const grown = x.reduce((a, b) => a + b, 0);
    if (grown === 0)
      return refuse(
        `No tube shows growth: the upper 95 % limit is ${(-Math.log(0.05) / all).toPrecision(3)} per g, there is no estimate`,
      );
    if (x.every((value, i) => value === n[i]))
      return refuse('Every tube shows growth: dilute further, there is no estimate');
    const score = (logM: number) => {
      const m = Math.exp(logM);
      return x.reduce((sum, xi, i) => sum + (xi * v[i]) / -Math.expm1(-m * v[i]), 0) - all;
    };
    const m = Math.exp(bisect(score, -40, 60));
    let observed = 0;
    let expected = 0;
    let logLikelihood = 0;
    let negative = 0;
    for (let i = 0; i < v.length; i++) {
      const p = -Math.expm1(-m * v[i]);
      const q = Math.exp(-m * v[i]);
      observed += (x[i] * v[i] ** 2 * q) / p ** 2;
      expected += (n[i] * v[i] ** 2 * q) / p;
      logLikelihood += logChoose(n[i], x[i]) + (x[i] > 0 ? x[i] * Math.log(p) : 0) - (n[i] - x[i]) * m * v[i];
      negative += (n[i] - x[i]) * v[i];
    }
    const error = 1 / (m * Math.LN10 * Math.sqrt(observed));
    const z = normalQuantile(0.5 + confidence_pct / 200);
    const likelihood = Math.exp(logLikelihood);
    return {
      values: {
        mpn_1g: m,
        low_1g: m * 10 ** (-z * error),
        high_1g: m * 10 ** (z * error),
        error,
        expectedError: 1 / (m * Math.LN10 * Math.sqrt(expected)),
        thomas_1g: grown / Math.sqrt(negative * all),
        likelihood,
      },
      warnings:
        likelihood < 1e-3
          ? ['This outcome is improbable at any density: look for an error in the dilutions.']
          : [],
    };
  },
});
