import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { bisect } from '../numeric/root.ts';
import { settling } from './settling.ts';

const room = { temperature: 293.15, pressure: 101325 };

export const settlingDiameter = calculation({
  name: 'settling-diameter',
  title: 'Particle diameter implied by an air count and a settle plate',
  inputs: {
    airborne_cfum3: number('C', 'airborne count', 'cfu/m3', { min: 1e-3, max: 1e6 }),
    colonies: number('n', 'colonies on the plate', '1', { min: 1e-3, max: 1e6 }),
    plate_mm: number('D', 'diameter of the plate', 'mm', {
      default: 90,
      min: 10,
      max: 300,
      from: 'usual plate, common practice',
    }),
    time_h: number('t', 'exposure', 'h', {
      default: 4,
      min: 1e-3,
      max: 24,
      from: 'longest exposure of a plate in EU GMP Annex 1, from memory',
    }),
  },
  outputs: {
    diameter_um: { symbol: 'd', label: 'equivalent diameter', unit: 'um' },
    speed_mms: { symbol: 'v', label: 'deposition speed', unit: 'mm/s' },
  },
  equation: ['v = n / (C A t), d from v by Stokes with slip'],
  validity: 'Unit density, 20 degC. A few colonies say little: look at their Poisson limits.',
  source: 'W. Whyte; G. G. Stokes (1851)',
  example: {
    inputs: { airborne_cfum3: 10, colonies: 5 },
    expected: { speed_mms: 5.458, diameter_um: 13.403 },
    tolerance: 0.001,
    source: 'check value A-16',
  },
  compute({ airborne_cfum3, colonies, plate_mm, time_h }) {
    const speed = colonies / (airborne_cfum3 * (Math.PI / 4) * (plate_mm / 1000) ** 2 * time_h * 3600);
    const logDiameter = bisect(
      (x) => settling(Math.exp(x), 1000, room.temperature, room.pressure).stokes - speed,
      Math.log(1e-9),
      Math.log(1e-2),
    );
    return { values: { diameter_um: Math.exp(logDiameter) * 1e6, speed_mms: speed * 1000 } };
  },
});
