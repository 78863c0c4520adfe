import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';

export const pumpEnergy = calculation({
  name: 'pump-energy',
  title: 'Power and energy of a pump',
  inputs: {
    flow_m3h: number('Q', 'flow', 'm3/h', { min: 0, max: 1e5 }),
    pressure_bar: number('dp', 'pressure that the pump adds', 'bar', { min: 0, max: 1000 }),
    efficiency_pct: number('eta', 'efficiency of pump and motor', '%', {
      default: 55,
      min: 1,
      max: 100,
      from: 'common practice',
    }),
    time_h: number('t', 'running time', 'h', { default: 1, min: 0, max: 8784, from: 'one of its unit' }),
  },
  outputs: {
    power_kW: { symbol: 'P', label: 'power', unit: 'kW' },
    energy_kWh: { symbol: 'E', label: 'energy', unit: 'kWh' },
  },
  equation: ['P = Q dp / eta, E = P t'],
  validity: 'Steady running at one point of the pump curve.',
  source: 'Energy balance',
  example: {
    inputs: { flow_m3h: 10.6, pressure_bar: 2 },
    expected: { power_kW: 1.07071 },
    tolerance: 5e-6,
    source: 'check value N-13',
  },
  compute({ flow_m3h, pressure_bar, efficiency_pct, time_h }) {
    const power = ((flow_m3h / 3600) * pressure_bar * 1e5) / (efficiency_pct / 100) / 1000;
    return { values: { power_kW: power, energy_kWh: power * time_h } };
  },
});
