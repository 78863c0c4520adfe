import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';

export const swabDetection = calculation({
  name: 'swab-detection',
  title: 'Probability that a swab finds the microbes of a niche',
  inputs: {
    density_cfumL: number('N', 'density in the residue', 'cfu/mL', { min: 0, max: 1e12 }),
    volume_mL: number('V', 'volume of the residue', 'mL', {
      default: 5,
      min: 0,
      max: 1e6,
      from: 'an example: give your own',
    }),
    share_pct: number('s', 'share of the residue that the swab reaches', '%', {
      default: 1,
      min: 0,
      max: 100,
      from: 'an example: give your own',
    }),
    recovery_pct: number('r', 'recovery of the swab', '%', {
      default: 50,
      min: 0,
      max: 100,
      from: 'common practice, 10 to 80 %',
    }),
  },
  outputs: {
    probability: { symbol: 'P', label: 'probability of at least one colony', unit: '1' },
    expected: { symbol: 'lambda', label: 'colonies to expect', unit: '1' },
  },
  equation: ['lambda = N V s r', 'P = 1 - exp(-lambda)'],
  validity: 'Random spread (Poisson). Microbes in a film or in clumps are found less often.',
  source: 'Poisson distribution',
  example: {
    inputs: { density_cfumL: 90.04 },
    expected: { probability: 0.894708 },
    tolerance: 2e-5,
    source: 'worked problem WP6, step 5',
  },
  compute({ density_cfumL, volume_mL, share_pct, recovery_pct }) {
    const expected = density_cfumL * volume_mL * (share_pct / 100) * (recovery_pct / 100);
    return { values: { probability: -Math.expm1(-expected), expected } };
  },
});
