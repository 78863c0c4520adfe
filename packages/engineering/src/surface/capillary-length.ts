import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { gravity, liquidWater } from '../water/properties.ts';

export const capillaryLength = calculation({
  name: 'capillary-length',
  title: 'Capillary length of water',
  inputs: {
    temperature_degC: number('T', 'water temperature', 'degC', {
      default: 20,
      min: 0.01,
      max: 100,
      from: 'a room, common practice',
    }),
  },
  outputs: {
    length_mm: { symbol: 'lc', label: 'capillary length', unit: 'mm' },
    surfaceTension: { symbol: 'sigma', label: 'surface tension', unit: 'N/m' },
    density: { symbol: 'rho', label: 'density', unit: 'kg/m3' },
  },
  equation: ['lc = sqrt(sigma / (rho g))'],
  validity:
    'Clean water against air. Surfactants lower the surface tension to about half, and the length by a third.',
  source:
    'P.-G. de Gennes, F. Brochard-Wyart, D. Quere, Capillarity and Wetting Phenomena (2004), 2.1; IAPWS R1-76(2014)',
  example: {
    inputs: { temperature_degC: 20 },
    expected: { length_mm: 2.7257 },
    tolerance: 1e-4,
    source: 'worked problem WP11, step 1',
  },
  compute({ temperature_degC }) {
    const { density, surfaceTension } = liquidWater(temperature_degC);
    return {
      values: { length_mm: 1000 * Math.sqrt(surfaceTension / (density * gravity)), surfaceTension, density },
    };
  },
});
