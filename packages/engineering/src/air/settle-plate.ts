import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { settling } from './settling.ts';

const room = { temperature: 293.15, pressure: 101325 };

export const settlePlate = calculation({
  name: 'settle-plate',
  title: 'Colonies on a settle plate for an airborne count',
  inputs: {
    airborne_cfum3: number('C', 'airborne count', 'cfu/m3', { min: 0, max: 1e6 }),
    diameter_um: number('d', 'equivalent diameter of the microbe-carrying particles', 'um', {
      default: 12,
      min: 0.5,
      max: 100,
      from: 'published means 9 to 18 um',
    }),
    plate_mm: number('D', 'diameter of the plate', 'mm', {
      default: 90,
      min: 10,
      max: 300,
      from: 'usual plate, common practice',
    }),
    time_h: number('t', 'exposure', 'h', {
      default: 4,
      min: 0,
      max: 24,
      usual: [0, 4],
      from: 'longest exposure of a plate in EU GMP Annex 1, from memory',
    }),
  },
  outputs: {
    colonies: { symbol: 'n', label: 'colonies to expect', unit: '1' },
    speed_mms: { symbol: 'v', label: 'settling speed', unit: 'mm/s' },
    area_cm2: { symbol: 'A', label: 'area of the plate', unit: 'cm2' },
  },
  equation: ['n = C v A t, v by Stokes with slip, A = pi D^2/4'],
  validity:
    'Still or gently mixed air, unit density, 20 degC. Under strong downflow or turbulence plates catch more or less.',
  source: 'W. Whyte, relation of settle plates and air samples; G. G. Stokes (1851)',
  example: {
    inputs: { airborne_cfum3: 10 },
    expected: { colonies: 4.0138 },
    tolerance: 0.005,
    source: 'check value A-15, tolerance as stated there for the viscosity of air',
  },
  compute({ airborne_cfum3, diameter_um, plate_mm, time_h }) {
    const { stokes } = settling(diameter_um * 1e-6, 1000, room.temperature, room.pressure);
    const area = (Math.PI / 4) * (plate_mm / 1000) ** 2;
    return {
      values: {
        colonies: airborne_cfum3 * stokes * area * time_h * 3600,
        speed_mms: stokes * 1000,
        area_cm2: area * 1e4,
      },
      warnings: time_h > 4 ? ['Beyond four hours the agar dries and counts fall; change the plate.'] : [],
    };
  },
});
