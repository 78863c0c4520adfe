import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { gravity, liquidWater } from '../water/properties.ts';

export const drainingFilm = calculation({
  name: 'draining-film-jeffreys',
  title: 'Film left on a wall some time after the flow stops (Jeffreys 1930)',
  inputs: {
    height: number('H', 'height of the wall', 'm', { min: 0.01, max: 50 }),
    time: number('t', 'time since the flow stopped', 's', { min: 1, max: 1e5 }),
    slope_deg: number('beta', 'slope of the wall, 90 is vertical', 'deg', {
      default: 90,
      min: 1,
      max: 90,
      from: 'an upright wall',
    }),
    temperature_degC: number('T', 'water temperature', 'degC', {
      default: 20,
      min: 0.01,
      max: 99,
      from: 'a room, common practice',
    }),
    width: number('U', 'width of the wall', 'm', { default: 1, min: 0, max: 100, from: 'one of its unit' }),
  },
  outputs: {
    mean_um: { symbol: 'delta_m', label: 'mean thickness', unit: 'um' },
    bottom_um: { symbol: 'delta_b', label: 'thickness at the bottom', unit: 'um' },
    volume_mL: { symbol: 'V', label: 'water on the wall', unit: 'mL' },
  },
  equation: [
    'delta(x) = sqrt(mu x / (rho g sin(beta) t)), x along the wall from the top',
    'delta_m = 2/3 delta(H / sin(beta))',
    'V = delta_m U H / sin(beta)',
  ],
  validity:
    'Wetted, smooth wall long after the start (the first film forgotten); on steel the film breaks into drops at about 0.1 mm, and drops stay.',
  source: 'H. Jeffreys, Proc. Camb. Phil. Soc. 26 (1930) 204',
  example: {
    // sqrt(1.0016e-3 * 1 / (998.21 * 9.80665 * 60)) = 41.295 um at the bottom.
    inputs: { height: 1, time: 60, temperature_degC: 20 },
    expected: { bottom_um: 41.295, mean_um: 27.53 },
    tolerance: 1e-3,
    source: 'hand calculation with mu and rho of check value P-03-20',
  },
  compute({ height, time, slope_deg, temperature_degC, width }) {
    const { density, viscosity } = liquidWater(temperature_degC);
    const sine = Math.sin((slope_deg * Math.PI) / 180);
    const bottom = Math.sqrt((viscosity * (height / sine)) / (density * gravity * sine * time));
    const mean = (2 / 3) * bottom;
    return {
      values: {
        mean_um: mean * 1e6,
        bottom_um: bottom * 1e6,
        volume_mL: (mean * width * height * 1e6) / sine,
      },
      warnings:
        mean < 1e-4
          ? ['Below about 0.1 mm the film breaks on a surface that water does not wet; drops remain.']
          : [],
    };
  },
});
