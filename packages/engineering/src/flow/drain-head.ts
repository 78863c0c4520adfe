import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { gravity } from '../water/properties.ts';
import { areaOf } from './pipe-state.ts';

export const drainHead = calculation({
  name: 'outlet-head',
  title: 'Level that backs up over an outlet at a given flow',
  inputs: {
    flow_m3h: number('Q', 'flow into the tank', 'm3/h', { min: 0, max: 1e4 }),
    outlet_mm: number('d', 'bore of the outlet', 'mm', { min: 1, max: 1000 }),
    discharge: number('Cd', 'discharge coefficient', '1', {
      default: 0.62,
      min: 0.3,
      max: 1,
      from: 'sharp-edged outlet, handbook value',
    }),
  },
  outputs: { head_mm: { symbol: 'h', label: 'level over the outlet', unit: 'mm' } },
  equation: ['h = (Q / (Cd a))^2 / (2 g), a = pi d^2 / 4'],
  validity:
    'Vented tank, free outflow without a return pump. A pool over the bottom shields it from the spray.',
  source: 'E. Torricelli (1643)',
  example: {
    inputs: { flow_m3h: 11.3097, outlet_mm: 50 },
    expected: { head_mm: 339.6 },
    tolerance: 2e-4,
    source: 'worked problem WP3, step 5',
  },
  compute({ flow_m3h, outlet_mm, discharge }) {
    return {
      values: {
        head_mm: (1000 * (flow_m3h / 3600 / (discharge * areaOf(outlet_mm / 1000))) ** 2) / (2 * gravity),
      },
    };
  },
});
