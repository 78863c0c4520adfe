import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';

export const jetImpact = calculation({
  name: 'jet-impact',
  title: 'Impact of a water jet on a surface',
  inputs: {
    pressure_bar: number('p', 'pressure at the nozzle above the surroundings', 'bar', { min: 0.1, max: 250 }),
    nozzle_mm: number('d', 'bore of the nozzle', 'mm', { min: 0.2, max: 50 }),
    velocity: number('phi', 'velocity coefficient of the nozzle', '1', {
      default: 0.95,
      min: 0.5,
      max: 1,
      from: 'handbook value',
    }),
    incidence_deg: number('gamma', 'angle between jet and surface', 'deg', {
      default: 90,
      min: 1,
      max: 90,
      from: 'a jet square to the wall',
    }),
    density: number('rho', 'density', 'kg/m3', {
      default: 998,
      min: 900,
      max: 1500,
      from: 'water at 20 degC',
    }),
  },
  outputs: {
    force: { symbol: 'F', label: 'force normal to the surface', unit: 'N' },
    speed: { symbol: 'v', label: 'speed of the jet', unit: 'm/s' },
    flow_Lmin: { symbol: 'Q', label: 'flow', unit: 'L/min' },
    stagnation_kPa: { symbol: 'p_s', label: 'pressure in the middle of the impact', unit: 'kPa' },
    power: { symbol: 'P', label: 'power of the jet', unit: 'W' },
  },
  equation: [
    'v = phi sqrt(2 p / rho), Q = v pi d^2 / 4',
    'F = rho Q v sin(gamma), p_s = rho v^2 / 2, P = p_s Q',
  ],
  validity:
    'A jet that still holds together, within about 100 nozzle bores; spray of drops loses speed in air and hits with less. Not a cleaning result.',
  source: 'Momentum balance; Bernoulli',
  example: {
    // p = 10 bar, phi = 1, rho = 1000: v = 44.721 m/s; Q = 1.4050e-4 m3/s; F = 6.2832 N = 2 p a.
    inputs: { pressure_bar: 10, nozzle_mm: 2, velocity: 1, density: 1000 },
    expected: { speed: 44.7214, force: 6.28319, flow_Lmin: 8.4298 },
    tolerance: 1e-5,
    source: 'closed form F = 2 p a for a loss-free nozzle',
  },
  caution:
    'High-pressure jets cut and inject: never towards people, electrics or open product, and they spread aerosol.',
  compute({ pressure_bar, nozzle_mm, velocity, incidence_deg, density }) {
    const speed = velocity * Math.sqrt((2e5 * pressure_bar) / density);
    const flow = (speed * Math.PI * (nozzle_mm / 1000) ** 2) / 4;
    const stagnation = (density * speed ** 2) / 2;
    return {
      values: {
        force: density * flow * speed * Math.sin((incidence_deg * Math.PI) / 180),
        speed,
        flow_Lmin: flow * 60000,
        stagnation_kPa: stagnation / 1000,
        power: stagnation * flow,
      },
    };
  },
});
