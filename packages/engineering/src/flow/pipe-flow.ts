import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { equation, inputs, outputs, solve, source, validity } from './pipe-flow-solve.ts';
import { areaOf } from './pipe-state.ts';

export const pipeFlow = calculation({
  name: 'pipe-flow',
  title: 'Water in a pipe at a given flow: speed, shear and pressure loss',
  inputs: { ...inputs, flow_m3h: number('Q', 'flow', 'm3/h', { min: 1e-5, max: 1e5 }) },
  outputs,
  equation,
  validity,
  source,
  example: {
    inputs: { bore_mm: 50, flow_m3h: 10.6029, temperature_degC: 80, roughness_um: 0.8 },
    expected: { speed: 1.5, reynolds: 205857, wallShear: 4.2862, gradient: 342.9 },
    tolerance: 1e-4,
    source: 'check value P-07-DN50-80',
  },
  compute: (x) => solve(x.flow_m3h / 3600 / areaOf(x.bore_mm / 1000), x),
});
