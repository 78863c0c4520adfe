import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { regimeWarning } from './friction.ts';
import { bore, roughness } from './pipe-inputs.ts';
import { areaOf, pipeState } from './pipe-state.ts';

export const speedForShear = calculation({
  name: 'speed-for-wall-shear',
  title: 'Speed that gives a wall shear in a pipe',
  inputs: {
    bore_mm: bore,
    wallShear: number('tau_w', 'wall shear', 'Pa', {
      default: 3,
      min: 0.01,
      max: 1000,
      from: 'a cleanability threshold often named for closed equipment, from memory',
    }),
    temperature_degC: number('T', 'water temperature', 'degC', {
      default: 60,
      min: 0.01,
      max: 99,
      from: 'common practice',
    }),
    roughness_um: roughness,
  },
  outputs: {
    speed: { symbol: 'v', label: 'mean speed', unit: 'm/s' },
    flow_m3h: { symbol: 'Q', label: 'flow', unit: 'm3/h' },
    reynolds: { symbol: 'Re', label: 'Reynolds number', unit: '1' },
  },
  equation: ['tau_w = f(Re, eps/d) rho v^2 / 8, solved for v'],
  validity:
    'Water in straight, full, round pipe. Wall shear in dead legs, tees and enlargements is far lower than in the pipe.',
  source: 'C. F. Colebrook, J. Inst. Civ. Eng. 11 (1939) 133; the threshold of 3 Pa from memory',
  example: {
    inputs: { bore_mm: 50, wallShear: 3, temperature_degC: 60 },
    expected: { speed: 1.189 },
    tolerance: 1e-3,
    source: 'check value P-08',
  },
  compute({ bore_mm, wallShear, temperature_degC, roughness_um }) {
    const at = (speed: number) =>
      pipeState(bore_mm / 1000, speed, roughness_um * 1e-6, temperature_degC, 101325);
    let low = 1e-6;
    let high = 1000;
    for (let i = 0; i < 100; i++) {
      const middle = Math.sqrt(low * high);
      if (at(middle).wallShear < wallShear) low = middle;
      else high = middle;
    }
    const { reynolds } = at(high);
    return {
      values: { speed: high, flow_m3h: high * areaOf(bore_mm / 1000) * 3600, reynolds },
      warnings: regimeWarning(reynolds),
    };
  },
});
