import { calculation, refuse } from '../calculation/calculation.ts';
import { list } from '../calculation/inputs.ts';
import { normalCdf, normalDensity } from '../numeric/special.ts';

/** phi(z)/Phi(z), also far out in the lower tail, where both vanish. */
function inverseMills(z: number): number {
  return z < -30 ? -z - 1 / z : normalDensity(z) / normalCdf(z);
}

/** Maximum likelihood for a normal sample with values below limits, by expectation-maximisation to 1e-14. */
function fit(
  found: readonly number[],
  limits: readonly number[],
): { readonly mean: number; readonly deviation: number } | undefined {
  const n = found.length + limits.length;
  const all = [...found, ...limits];
  let mean = all.reduce((a, b) => a + b, 0) / n;
  let variance = all.reduce((a, b) => a + (b - mean) ** 2, 0) / n + 1e-6;
  for (let i = 0; i < 100000; i++) {
    const s = Math.sqrt(variance);
    let first = 0;
    let second = 0;
    for (const x of found) {
      first += x;
      second += x * x;
    }
    for (const limit of limits) {
      const ratio = inverseMills((limit - mean) / s);
      first += mean - s * ratio;
      second += mean * mean + variance - s * ratio * (limit + mean);
    }
    const nextMean = first / n;
    const nextVariance = second / n - nextMean ** 2;
    if (!(nextVariance > 0)) return undefined;
    const settled = Math.abs(nextMean - mean) + Math.abs(nextVariance - variance) < 1e-14 * (1 + variance);
    mean = nextMean;
    variance = nextVariance;
    if (settled) return { mean, deviation: Math.sqrt(variance) };
  }
  return { mean, deviation: Math.sqrt(variance) };
}

export const censoredNormal = calculation({
  name: 'results-below-detection',
  title: 'Mean and spread when some results are below the detection limit',
  inputs: {
    found: list('x', 'results above the limit (take logarithms before)', '1', { minCount: 2 }),
    limits: list('L', 'detection limit of each result below it', '1', { minCount: 1 }),
  },
  outputs: {
    mean: { symbol: 'm', label: 'mean, maximum likelihood', unit: '1' },
    deviation: { symbol: 's', label: 'standard deviation, maximum likelihood', unit: '1' },
    upper95: { symbol: 'x_95', label: '95 % point of the distribution', unit: '1' },
    byHalf: { symbol: 'm_h', label: 'mean when log10 results are set to half of their limit', unit: '1' },
    byLimit: { symbol: 'm_L', label: 'mean when they are set to their limit', unit: '1' },
    below_pct: { symbol: 'b', label: 'share below the limit', unit: '%' },
  },
  equation: ['maximise sum ln(phi((x-m)/s)/s) + sum ln Phi((L-m)/s)', 'x_95 = m + 1.644854 s'],
  validity:
    'Normal results (mostly their logarithms). Above about 70 % below the limit the answer leans on the assumption. Substituting half of the limit is shown only to be compared.',
  source: 'A. C. Cohen, Technometrics 1 (1959) 217; A. P. Dempster et al. (1977)',
  example: {
    inputs: { found: [1.3, 1.6, 1.1, 2, 1.8, 1.45], limits: [1, 1, 1, 1, 1, 1] },
    expected: { mean: 1.03675, deviation: 0.60319, byHalf: 1.12032, byLimit: 1.27083 },
    tolerance: 9e-6,
    source: 'check value S-17, agrees there with R survreg',
  },
  compute({ found, limits }) {
    if (new Set(found).size < 2) return refuse('At least two different results above the limit are needed');
    const result = fit(found, limits);
    if (result === undefined) return refuse('The likelihood has no maximum for these results');
    const n = found.length + limits.length;
    const sum = found.reduce((a, b) => a + b, 0);
    const below = (100 * limits.length) / n;
    return {
      values: {
        mean: result.mean,
        deviation: result.deviation,
        upper95: result.mean + 1.6448536269514722 * result.deviation,
        byHalf: (sum + limits.reduce((a, b) => a + b - Math.log10(2), 0)) / n,
        byLimit: (sum + limits.reduce((a, b) => a + b, 0)) / n,
        below_pct: below,
      },
      warnings:
        below > 70 ? ['More than 70 % lie below the limit: the mean rests on the assumed distribution.'] : [],
    };
  },
});
