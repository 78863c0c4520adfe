import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { gravity, liquidWater } from '../water/properties.ts';

/** End of laminar-wavy flow (handbook practice, from memory). */
const laminarEnd = 1600;

export const fallingFilm = calculation({
  name: 'falling-film-nusselt',
  title: 'Film of water running down a wall (Nusselt 1916)',
  inputs: {
    perLength_Lminm: number('q', 'flow per width of the wall', 'L/(min m)', { min: 1e-3, max: 500 }),
    temperature_degC: number('T', 'water temperature', 'degC', {
      default: 60,
      min: 0.01,
      max: 99,
      from: 'common practice',
    }),
    slope_deg: number('beta', 'slope of the wall, 90 is vertical', 'deg', {
      default: 90,
      min: 1,
      max: 90,
      from: 'an upright wall',
    }),
    height: number('H', 'height of the wetted wall', 'm', {
      default: 1,
      min: 0,
      max: 50,
      from: 'one of its unit',
    }),
    width: number('U', 'width of the wetted wall', 'm', {
      default: 1,
      min: 0,
      max: 100,
      from: 'one of its unit',
    }),
  },
  outputs: {
    thickness_um: { symbol: 'delta', label: 'film thickness', unit: 'um' },
    speed: { symbol: 'u', label: 'mean speed', unit: 'm/s' },
    reynolds: { symbol: 'Re', label: 'film Reynolds number 4 Gamma / mu', unit: '1' },
    wallShear: { symbol: 'tau_w', label: 'wall shear', unit: 'Pa' },
    holdUp_L: { symbol: 'V', label: 'water on the wall', unit: 'L' },
    massFlow: { symbol: 'Gamma', label: 'mass flow per width', unit: 'kg/(s m)' },
  },
  equation: [
    'Gamma = rho q, Re = 4 Gamma / mu',
    'delta = (3 mu Gamma / (rho^2 g sin(beta)))^(1/3), u = q / delta, tau_w = rho g delta sin(beta)',
    'V = delta H U / sin(beta)',
  ],
  validity:
    'Laminar smooth film, Re below about 1600. Spray rates of practice lie above: there thickness and shear are estimates. H is the vertical height.',
  source: 'W. Nusselt, VDI-Zeitschrift 60 (1916) 541; limit of the regime from memory',
  example: {
    inputs: { perLength_Lminm: 30, temperature_degC: 60, height: 3, width: 6.2832 },
    expected: { thickness_um: 416.98, speed: 1.1991, reynolds: 4219, wallShear: 4.0205, holdUp_L: 7.86 },
    tolerance: 1e-4,
    source: 'check value P-21-30-60 and worked problem WP3',
  },
  compute({ perLength_Lminm, temperature_degC, slope_deg, height, width }) {
    const { density, viscosity } = liquidWater(temperature_degC);
    const flow = perLength_Lminm / 60000;
    const massFlow = density * flow;
    const pull = gravity * Math.sin((slope_deg * Math.PI) / 180);
    const thickness = Math.cbrt((3 * viscosity * massFlow) / (density ** 2 * pull));
    const reynolds = (4 * massFlow) / viscosity;
    return {
      values: {
        thickness_um: thickness * 1e6,
        speed: flow / thickness,
        reynolds,
        wallShear: density * pull * thickness,
        holdUp_L: (1000 * thickness * height * width * gravity) / pull,
        massFlow,
      },
      warnings:
        reynolds > laminarEnd
          ? [
              `Film Reynolds number ${reynolds.toFixed(0)} is above about 1600: the film is wavy and turbulent, these values are estimates.`,
            ]
          : [],
    };
  },
});
