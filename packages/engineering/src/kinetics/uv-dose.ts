import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';

export const uvDose = calculation({
  name: 'uv-dose',
  title: 'UV-C dose and log reduction on an exposed surface',
  inputs: {
    irradiance_mWcm2: number('E', 'irradiance at 254 nm on the surface', 'mW/cm2', { min: 1e-4, max: 1000 }),
    time: number('t', 'exposure', 's', { min: 0, max: 86400 }),
    perLog_mJcm2: number('D_UV', 'dose for one log', 'mJ/cm2', {
      default: 11.6,
      min: 0.1,
      max: 1000,
      from: 'B. subtilis spores, dose tables (secondary copy)',
    }),
    shade_pct: number('s', 'share of the surface in shadow', '%', {
      default: 0,
      min: 0,
      max: 100,
      from: 'none when left empty',
    }),
    ageing_pct: number('a', 'lamp output lost by age and dirt', '%', {
      default: 0,
      min: 0,
      max: 95,
      from: 'none when left empty',
    }),
  },
  outputs: {
    reduction_log10: { symbol: 'R', label: 'log reduction where the light reaches', unit: 'log10' },
    dose_mJcm2: { symbol: 'H', label: 'dose', unit: 'mJ/cm2' },
    overall_log10: {
      symbol: 'R_o',
      label: 'log reduction of the whole surface, shadow included',
      unit: 'log10',
    },
  },
  equation: ['H = E (1 - a) t', 'R = H / D_UV', 'R_o = -log10(s + (1 - s) 10^-R)'],
  validity:
    'Direct light on a clean, smooth, dry surface. Dose tables give doses for a stated log level: use the one log value. Shadow and soil rule the result.',
  source: 'Bunsen-Roscoe reciprocity, log-linear; dose tables (secondary copies)',
  example: {
    inputs: { irradiance_mWcm2: 1, time: 23.2 },
    expected: { dose_mJcm2: 23.2, reduction_log10: 2 },
    tolerance: 1e-12,
    source: 'check value K-23: 11.6 mJ/cm2 for one log; two log were measured at 22',
  },
  caution: 'UV-C burns eyes and skin within seconds: interlock the lamp with the guard.',
  compute(x) {
    const dose = x.irradiance_mWcm2 * (1 - x.ageing_pct / 100) * x.time;
    const reduction = dose / x.perLog_mJcm2;
    const shade = x.shade_pct / 100;
    const left = shade + (1 - shade) * 10 ** -reduction;
    return {
      values: {
        reduction_log10: reduction,
        dose_mJcm2: dose,
        overall_log10: Math.max(0, -Math.log10(Math.max(left, 1e-300))),
      },
      warnings: [
        ...(reduction > 4
          ? ['Beyond about four log tailing by shadow and soil sets in; do not count on more.']
          : []),
        ...(shade > 0 ? ['What lies in shadow is not treated.'] : []),
      ],
    };
  },
});
