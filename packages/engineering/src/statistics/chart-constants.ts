import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { simpson } from '../numeric/quadrature.ts';
import { logGamma, normalCdf, normalDensity } from '../numeric/special.ts';

/** Step, in standard deviations, of the common grid for place and range. */
const step = 0.06;
const half = 150;
const widest = 240;

/**
 * Mean and mean square of the range of n standard normal values. One grid serves x and x + w, so that the normal
 * distribution is computed once a point and not once a pair.
 */
function rangeMoments(n: number): { readonly d2: number; readonly square: number } {
  const cdf = Float64Array.from({ length: 2 * half + widest + 1 }, (_, k) => normalCdf((k - half) * step));
  /** P(range <= w steps). */
  const within = (w: number) =>
    n *
    simpson(
      (k) => normalDensity((k - half) * step) * (cdf[k + w] - cdf[k]) ** (n - 1) * step,
      0,
      2 * half,
      2 * half,
    );
  const beyond = Float64Array.from({ length: widest + 1 }, (_, w) => 1 - within(w));
  return {
    d2: simpson((w) => beyond[w] * step, 0, widest, widest),
    square: simpson((w) => 2 * w * step * beyond[w] * step, 0, widest, widest),
  };
}

export const chartConstants = calculation({
  name: 'chart-constants',
  title: 'Constants of charts of mean and range',
  inputs: { size: number('n', 'results of a group', '1', { min: 2, max: 50, whole: true }) },
  outputs: {
    d2: { symbol: 'd2', label: 'mean range over standard deviation', unit: '1' },
    d3: { symbol: 'd3', label: 'standard deviation of the range over standard deviation', unit: '1' },
    a2: { symbol: 'A2', label: 'limits of the mean from the range', unit: '1' },
    lower: { symbol: 'D3', label: 'lower limit of the range', unit: '1' },
    upper: { symbol: 'D4', label: 'upper limit of the range', unit: '1' },
    c4: { symbol: 'c4', label: 'mean standard deviation over true one', unit: '1' },
  },
  equation: [
    'd2 = integral of 1 - F(w), E(W^2) = integral of 2 w (1 - F(w)), F(w) = n integral of phi(x) (Phi(x+w) - Phi(x))^(n-1); d3 = sqrt(E(W^2) - d2^2)',
    'A2 = 3/(d2 sqrt(n)), D3 = max(0, 1 - 3 d3/d2), D4 = 1 + 3 d3/d2',
    'c4 = sqrt(2/(n-1)) Gamma(n/2)/Gamma((n-1)/2)',
  ],
  validity: 'Normal, independent results in groups of equal size.',
  source: 'L. H. C. Tippett, Biometrika 17 (1925) 364; ISO 7870-2',
  example: {
    inputs: { size: 5 },
    expected: { d2: 2.32593, d3: 0.86408, a2: 0.5768, upper: 2.1145, c4: 0.93999 },
    tolerance: 4e-5,
    source: 'check value S-11-5',
  },
  compute({ size: n }) {
    const { d2, square } = rangeMoments(n);
    const d3 = Math.sqrt(square - d2 * d2);
    return {
      values: {
        d2,
        d3,
        a2: 3 / (d2 * Math.sqrt(n)),
        lower: Math.max(0, 1 - (3 * d3) / d2),
        upper: 1 + (3 * d3) / d2,
        c4: Math.sqrt(2 / (n - 1)) * Math.exp(logGamma(n / 2) - logGamma((n - 1) / 2)),
      },
    };
  },
});
