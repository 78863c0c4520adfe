import { calculation, refuse } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';

export const comeUpTime = calculation({
  name: 'come-up-time',
  title: 'Time for a part to come up to temperature (lumped)',
  inputs: {
    mass: number('m', 'mass of the part', 'kg', { min: 1e-4, max: 1e5 }),
    heatCapacity: number('c', 'heat capacity', 'J/(kg K)', {
      default: 500,
      min: 100,
      max: 5000,
      from: 'stainless steel',
    }),
    area: number('A', 'heated surface', 'm2', { min: 1e-6, max: 1e4 }),
    coefficient: number('h', 'heat transfer coefficient', 'W/(m2 K)', {
      default: 1000,
      min: 1,
      max: 20000,
      from: 'common practice: condensing steam with air 500 to 5000, hot water 500 to 3000, air 10 to 50',
    }),
    conductivity: number('k', 'conductivity of the material', 'W/(m K)', {
      default: 15,
      min: 0.1,
      max: 400,
      from: 'austenitic steel, EN 10088-1, from memory',
    }),
    start_degC: number('T_0', 'start temperature', 'degC', {
      default: 20,
      min: -40,
      max: 200,
      from: 'a room, common practice',
    }),
    medium_degC: number('T_m', 'temperature of the medium', 'degC', {
      default: 121.1,
      min: -40,
      max: 250,
      from: 'a retort of F0, 250 degF',
    }),
    target_degC: number('T', 'temperature to reach', 'degC', {
      default: 120,
      min: -40,
      max: 250,
      from: 'an example: give your own',
    }),
  },
  outputs: {
    time: { symbol: 't', label: 'time to reach it', unit: 's' },
    constant: { symbol: 't_c', label: 'time constant', unit: 's' },
    biot: { symbol: 'Bi', label: 'Biot number', unit: '1' },
  },
  equation: [
    't_c = m c / (h A), t = t_c ln((T_m - T_0)/(T_m - T))',
    'Bi = h (m/(rho A))/k with rho = 7900 kg/m3',
  ],
  validity:
    'One temperature in the whole part: Biot number below 0.1. Above it the inside lags and the true time is longer.',
  source: 'Lumped capacitance (F. P. Incropera, D. P. DeWitt, 5.1)',
  example: {
    inputs: {
      mass: 1,
      area: 0.1,
      coefficient: 100,
      start_degC: 20,
      medium_degC: 100,
      target_degC: 100 - 80 / Math.E,
    },
    expected: { time: 50, constant: 50 },
    tolerance: 1e-9,
    source: 'closed form: one time constant',
  },
  compute(x) {
    const share = (x.medium_degC - x.start_degC) / (x.medium_degC - x.target_degC);
    if (!(share >= 1) || !Number.isFinite(share))
      return refuse('The target must lie between the start temperature and the temperature of the medium');
    const constant = (x.mass * x.heatCapacity) / (x.coefficient * x.area);
    const biot = (x.coefficient * (x.mass / (7900 * x.area))) / x.conductivity;
    return {
      values: { time: constant * Math.log(share), constant, biot },
      warnings:
        biot > 0.1 ? ['The Biot number is above 0.1: the inside of the part lags behind, take longer.'] : [],
    };
  },
});
