import { calculation, refuse } from '../calculation/calculation.ts';
import { list, number } from '../calculation/inputs.ts';
import { uniformSource } from '../numeric/random.ts';

/** Above this number of splits they are drawn by chance instead of counted. */
const mostSplits = 200000;

/** Values drawn in one run, about two seconds. */
const mostDraws = 2e8;

function choose(n: number, k: number): number {
  let result = 1;
  for (let i = 1; i <= k; i++) result = (result * (n - k + i)) / i;
  return Math.round(result);
}

/** Share of all splits whose sum of the first group is at least as far from its expectation as the observed one. */
function exactShare(values: readonly number[], size: number, far: (sum: number) => boolean): number {
  const picked = Array.from({ length: size }, (_, i) => i);
  let hits = 0;
  let total = 0;
  for (;;) {
    let sum = 0;
    for (const i of picked) sum += values[i];
    if (far(sum)) hits++;
    total++;
    let at = size - 1;
    while (at >= 0 && picked[at] === values.length - size + at) at--;
    if (at < 0) return hits / total;
    picked[at]++;
    for (let j = at + 1; j < size; j++) picked[j] = picked[j - 1] + 1;
  }
}

function drawnShare(
  values: readonly number[],
  size: number,
  far: (sum: number) => boolean,
  trials: number,
  seed: number,
): number {
  const uniform = uniformSource(seed);
  const pool = [...values];
  let hits = 0;
  for (let t = 0; t < trials; t++) {
    let sum = 0;
    for (let i = 0; i < size; i++) {
      const j = i + Math.floor(uniform() * (pool.length - i));
      [pool[i], pool[j]] = [pool[j], pool[i]];
      sum += pool[i];
    }
    if (far(sum)) hits++;
  }
  // The observed split counts as one of the drawn ones (B. Phipson, G. K. Smyth 2010).
  return (hits + 1) / (trials + 1);
}

export const permutationTest = calculation({
  name: 'compare-two-means',
  title: 'Do two cleaning variants differ in their results? (permutation test)',
  inputs: {
    first: list('x', 'results of variant A', '1', { minCount: 2 }),
    second: list('y', 'results of variant B', '1', { minCount: 2 }),
    trials: number('N', 'drawn splits when there are too many to count', '1', {
      default: 100000,
      min: 1000,
      max: 1e6,
      whole: true,
      from: 'common practice: the random error stays below some per cent',
    }),
    seed: number('seed', 'seed of the random numbers', '1', {
      default: 1,
      min: 0,
      max: 4294967295,
      whole: true,
      from: 'any one: the same seed gives the same numbers',
    }),
  },
  outputs: {
    twoSided: { symbol: 'p', label: 'two-sided probability', unit: '1' },
    difference: { symbol: 'd', label: 'mean of A minus mean of B', unit: '1' },
    exact: { symbol: 'e', label: '1 when all splits were counted, 0 when drawn', unit: '1' },
    smallest: { symbol: 'p_min', label: 'smallest probability that so few results can give', unit: '1' },
  },
  equation: [
    'p = share of all splits into groups of these sizes whose difference of means is at least as large',
  ],
  validity: 'Variants assigned by chance; the spread may be of any shape. Counts of colonies as logarithms.',
  source: 'E. J. G. Pitman (1937); B. Phipson, G. K. Smyth (2010)',
  example: {
    // 1,2,3 against 4,5,6: only 2 of 20 splits are as far apart.
    inputs: { first: [1, 2, 3], second: [4, 5, 6] },
    expected: { twoSided: 0.1, difference: -3, exact: 1 },
    tolerance: 1e-12,
    source: 'by hand: 2 of C(6,3) = 20 splits',
  },
  compute({ first, second, trials, seed }) {
    const all = [...first, ...second];
    const total = all.reduce((a, b) => a + b, 0);
    const expected = (total * first.length) / all.length;
    const sum = first.reduce((a, b) => a + b, 0);
    const limit = Math.abs(sum - expected) * (1 - 1e-12);
    const far = (s: number) => Math.abs(s - expected) >= limit;
    const splits = choose(all.length, first.length);
    const exact = splits <= mostSplits;
    if (!exact && trials * first.length > mostDraws)
      return refuse(
        `${trials} drawn splits of ${first.length} results take too long: ask for at most ${Math.floor(mostDraws / first.length)}`,
      );
    return {
      values: {
        twoSided: exact
          ? exactShare(all, first.length, far)
          : drawnShare(all, first.length, far, trials, seed),
        difference: sum / first.length - (total - sum) / second.length,
        exact: exact ? 1 : 0,
        smallest: 1 / (exact ? splits : trials + 1),
      },
    };
  },
});
