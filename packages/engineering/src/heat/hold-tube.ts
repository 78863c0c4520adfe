import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { laminarLimit, turbulentLimit } from '../flow/friction.ts';
import { areaOf } from '../flow/pipe-state.ts';

/** Greatest over mean speed. Turbulent: an initial guide; the fastest particle is to be measured. */
function fastestOverMean(reynolds: number): number {
  if (reynolds < turbulentLimit) return 2;
  const share = Math.min(1, Math.log(reynolds / turbulentLimit) / Math.log(20000 / turbulentLimit));
  return 1.33 + share * (1.25 - 1.33);
}

export const holdTube = calculation({
  name: 'hold-tube',
  title: 'Hold time of the fastest particle in a tube',
  inputs: {
    bore_mm: number('d', 'bore', 'mm', { min: 1, max: 500 }),
    length: number('L', 'length', 'm', { min: 0, max: 1e4 }),
    flow_m3h: number('Q', 'flow', 'm3/h', { min: 1e-6, max: 1e4 }),
    kinematic_mm2s: number('nu', 'kinematic viscosity', 'mm2/s', {
      default: 0.365,
      min: 0.1,
      max: 1e5,
      from: 'water at 80 degC',
    }),
  },
  outputs: {
    fastest: { symbol: 't_min', label: 'hold time of the fastest particle', unit: 's' },
    mean: { symbol: 't_m', label: 'mean hold time', unit: 's' },
    reynolds: { symbol: 'Re', label: 'Reynolds number', unit: '1' },
    ratio: { symbol: 'v_max/v', label: 'greatest over mean speed', unit: '1' },
  },
  equation: [
    't_m = L pi d^2 / (4 Q), Re = v d / nu',
    'v_max/v = 2 below Re 4000; 1.33 at 4000, 1.25 from 20 000 on, straight in log Re between',
    't_min = t_m / (v_max/v)',
  ],
  validity: 'Straight or gently coiled tube, isothermal, no particles that move faster than the liquid.',
  source:
    'Hagen-Poiseuille profile; guidance on pasteuriser holding sections for turbulent flow (secondary copy)',
  example: {
    inputs: { bore_mm: 50, length: 10, flow_m3h: 0.1, kinematic_mm2s: 1 },
    expected: { fastest: 353.429, mean: 706.858, ratio: 2 },
    tolerance: 1e-5,
    source: 'closed form of laminar flow, Re 707',
  },
  compute({ bore_mm, length, flow_m3h, kinematic_mm2s }) {
    const d = bore_mm / 1000;
    const speed = flow_m3h / 3600 / areaOf(d);
    const reynolds = (speed * d) / (kinematic_mm2s * 1e-6);
    const ratio = fastestOverMean(reynolds);
    const mean = length / speed;
    return {
      values: { fastest: mean / ratio, mean, reynolds, ratio },
      warnings:
        reynolds > laminarLimit && reynolds < turbulentLimit
          ? ['Between laminar and turbulent: the laminar ratio of 2 was taken, the safe side.']
          : [],
    };
  },
});
