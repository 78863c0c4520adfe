import { calculation, refuse } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { chiSquareQuantile } from '../numeric/special.ts';
import { confidence } from './inputs.ts';

export const swabResult = calculation({
  name: 'swab-result',
  title: 'From colonies on a plate to colonies on the surface, with the detection limit',
  inputs: {
    colonies: number('n', 'colonies counted', '1', { min: 0, max: 1e6, whole: true }),
    area_cm2: number('A', 'area swabbed', 'cm2', {
      default: 25,
      min: 0.01,
      max: 1e5,
      from: 'common practice',
    }),
    eluted_mL: number('V_e', 'volume in which the swab was eluted', 'mL', {
      default: 10,
      min: 0.01,
      max: 1e5,
      from: 'common practice',
    }),
    plated_mL: number('V_p', 'volume plated, at the dilution used', 'mL', {
      default: 1,
      min: 1e-9,
      max: 1e5,
      from: 'one of its unit',
    }),
    recovery_pct: number('r', 'recovery of the method', '%', {
      default: 100,
      min: 0.1,
      max: 100,
      from: 'no recovery study: 100 % flatters the result',
    }),
    limit_1cm2: number('L', 'limit', '1/cm2', {
      default: 1,
      min: 0,
      max: 1e9,
      from: 'an example: give your own',
    }),
    confidence_pct: confidence,
  },
  outputs: {
    verdict: {
      symbol: 'v',
      label: 'verdict',
      unit: '1',
      words: { 1: 'below the limit', 0: 'above the limit', [-1]: 'not shown' },
    },
    density_1cm2: { symbol: 'x', label: 'colonies per area', unit: '1/cm2' },
    detection_1cm2: { symbol: 'LOD', label: 'what one colony stands for', unit: '1/cm2' },
    upper_1cm2: { symbol: 'x_u', label: 'upper limit, one-sided', unit: '1/cm2' },
  },
  equation: [
    'LOD = V_e/(V_p A r), x = n LOD, x_u = chi2(c; 2n+2)/2 LOD',
    'not shown: no colony and LOD above the limit',
  ],
  validity: 'Countable plates, random spread. Write "below LOD", never zero.',
  source: 'ISO 18593 (sampling of surfaces); F. Garwood (1936)',
  example: {
    inputs: { colonies: 0, area_cm2: 25, eluted_mL: 10, plated_mL: 1, limit_1cm2: 0.2 },
    expected: { verdict: -1, detection_1cm2: 0.4, density_1cm2: 0 },
    tolerance: 1e-12,
    source: 'arithmetic: one colony is 10 in 25 cm2, 0.40 per cm2',
  },
  compute(x) {
    if (x.plated_mL > x.eluted_mL) return refuse('More volume was plated than eluted');
    const detection = x.eluted_mL / (x.plated_mL * x.area_cm2 * (x.recovery_pct / 100));
    const density = x.colonies * detection;
    const shown = x.colonies > 0 || detection <= x.limit_1cm2;
    return {
      values: {
        verdict: shown ? (density <= x.limit_1cm2 ? 1 : 0) : -1,
        density_1cm2: density,
        detection_1cm2: detection,
        upper_1cm2: (chiSquareQuantile(x.confidence_pct / 100, 2 * x.colonies + 2) / 2) * detection,
      },
      warnings: [
        ...(shown
          ? []
          : ['The detection limit lies above the limit: plate more of the eluate or swab more area.']),
        ...(x.colonies > 300 ? ['More than 300 colonies: dilute, the count is too low.'] : []),
      ],
    };
  },
});
