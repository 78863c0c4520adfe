import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { settling } from './settling.ts';

export const settlingSpeed = calculation({
  name: 'settling-speed',
  title: 'Settling speed of a particle in still air (Stokes, Cunningham)',
  inputs: {
    diameter_um: number('d', 'diameter of the particle', 'um', {
      default: 14,
      min: 0.01,
      max: 200,
      usual: [0.05, 100],
      from: 'mean of microbe-carrying particles after W. Whyte, from memory',
    }),
    density: number('rho_p', 'density of the particle', 'kg/m3', {
      default: 1000,
      min: 100,
      max: 20000,
      from: 'unit density: aerodynamic diameter',
    }),
    temperature_degC: number('T', 'air temperature', 'degC', {
      default: 20,
      min: -20,
      max: 100,
      from: 'a room, common practice',
    }),
    pressure_kPa: number('p', 'air pressure', 'kPa', {
      default: 101.325,
      min: 50,
      max: 110,
      from: 'standard atmosphere, ISO 2533',
    }),
    height: number('H', 'height to fall', 'm', { default: 1, min: 0, max: 20, from: 'one of its unit' }),
  },
  outputs: {
    stokes_mms: { symbol: 'v_s', label: 'settling speed, Stokes with slip', unit: 'mm/s' },
    speed_mms: { symbol: 'v', label: 'settling speed with the drag of Schiller and Naumann', unit: 'mm/s' },
    slip: { symbol: 'C_c', label: 'slip correction', unit: '1' },
    time: { symbol: 't', label: 'time to fall the height', unit: 's' },
  },
  equation: [
    'C_c = 1 + Kn (1.257 + 0.4 exp(-1.1/Kn)), Kn = 2 lambda/d, lambda = 0.0665 um at 20 degC',
    'v_s = rho_p d^2 g C_c / (18 mu)',
    'v = v_s / (1 + 0.15 Re^0.687); t = H / v',
  ],
  validity:
    'Spheres in still air, 0.05 to 100 um. Room air moves at 100 mm/s and more, so small particles do not simply settle.',
  source:
    'G. G. Stokes (1851); E. Cunningham (1910) with the constants of W. C. Hinds, Aerosol Technology; L. Schiller, A. Naumann (1935)',
  example: {
    inputs: { diameter_um: 14 },
    expected: { stokes_mms: 5.95198, slip: 1.0119 },
    tolerance: 0.005,
    source: 'check value A-14-14, tolerance as stated there for the viscosity of air',
  },
  compute({ diameter_um, density, temperature_degC, pressure_kPa, height }) {
    const state = settling(diameter_um * 1e-6, density, temperature_degC + 273.15, pressure_kPa * 1000);
    return {
      values: {
        stokes_mms: state.stokes * 1000,
        speed_mms: state.speed * 1000,
        slip: state.slip,
        time: height / state.speed,
      },
    };
  },
});
