import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { equation, inputs, outputs, solve, source, validity } from './pipe-flow-solve.ts';

export const pipeFlowAtSpeed = calculation({
  name: 'pipe-flow-at-speed',
  title: 'Water in a pipe at a given speed: shear and pressure loss',
  inputs: {
    ...inputs,
    speed: number('v', 'mean speed', 'm/s', {
      default: 1.5,
      min: 1e-4,
      max: 20,
      from: 'usual least speed of cleaning in place, common practice',
    }),
  },
  outputs,
  equation,
  validity,
  source,
  example: {
    inputs: { bore_mm: 50, speed: 1.5, temperature_degC: 60, roughness_um: 0.8 },
    expected: {
      wallShear: 4.5608,
      flow_m3h: 10.6029,
      reynolds: 158227,
      friction: 0.016493,
      gradient: 364.86,
    },
    tolerance: 1e-4,
    source: 'check value P-07-DN50-60',
  },
  compute: (x) => solve(x.speed, x),
});
