import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';

export const deadLegTemperature = calculation({
  name: 'dead-leg-temperature',
  title: 'Temperature at the tip of a stagnant dead leg (fin model)',
  inputs: {
    ratio: number('L/d', 'length over bore, from the inner wall of the main', '1', { min: 0, max: 50 }),
    bore_mm: number('d', 'bore of the branch', 'mm', {
      default: 26,
      min: 1,
      max: 500,
      from: 'a usual size, common practice',
    }),
    wall_mm: number('s', 'wall of the branch', 'mm', {
      default: 1.5,
      min: 0.1,
      max: 20,
      from: 'a usual size, common practice',
    }),
    main_degC: number('T_0', 'temperature in the main', 'degC', {
      default: 80,
      min: 0,
      max: 180,
      from: 'an example: give your own',
    }),
    room_degC: number('T_a', 'room temperature', 'degC', {
      default: 20,
      min: -20,
      max: 60,
      from: 'a room, common practice',
    }),
    outside: number('h', 'heat transfer coefficient outside', 'W/(m2 K)', {
      default: 10,
      min: 0.1,
      max: 1000,
      from: 'common practice, bare tube in still air',
    }),
    steelConductivity: number('k_s', 'conductivity of the steel', 'W/(m K)', {
      default: 15,
      min: 5,
      max: 400,
      from: 'austenitic steel, EN 10088-1, from memory',
    }),
    liquidConductivity: number('k_w', 'conductivity of the liquid', 'W/(m K)', {
      default: 0.651,
      min: 0.1,
      max: 1,
      from: 'water at 60 degC, IAPWS R15-11',
    }),
    diffusivity: number('D_c', 'diffusivity of the cleaning chemical', 'm2/s', {
      default: 2e-9,
      min: 1e-10,
      max: 1e-8,
      from: 'NaOH in water, common practice',
    }),
  },
  outputs: {
    tip_degC: { symbol: 'T_t', label: 'temperature at the tip', unit: 'degC' },
    below: { symbol: 'dT', label: 'tip below the main', unit: 'K' },
    length_mm: { symbol: 'L', label: 'length of the branch', unit: 'mm' },
    finNumber: { symbol: 'm', label: 'fin parameter', unit: '1/m' },
    volume_mL: { symbol: 'V', label: 'volume of the branch', unit: 'mL' },
    diffusion_h: { symbol: 't_D', label: 'time scale of diffusion into the branch', unit: 'h' },
  },
  equation: [
    'kA = k_w pi d^2/4 + k_s pi s (d + s), P = pi (d + 2 s), m = sqrt(h P / kA)',
    'T_t = T_a + (T_0 - T_a)/cosh(m L), insulated tip',
    't_D = L^2 / D_c',
  ],
  validity:
    'No flow exchange: the worst case. Natural convection in an upward branch and jets from the main bring more heat into the first one or two bores.',
  source:
    'F. P. Incropera, D. P. DeWitt, Fundamentals of Heat and Mass Transfer, 3.6 (fin with insulated tip)',
  example: {
    inputs: { ratio: 1.5 },
    expected: { tip_degC: 65.517, finNumber: 19.9479, volume_mL: 20.71, diffusion_h: 211.25 },
    tolerance: 3e-4,
    source: 'worked problem WP10',
  },
  compute(x) {
    const d = x.bore_mm / 1000;
    const s = x.wall_mm / 1000;
    const conductance =
      (x.liquidConductivity * Math.PI * d * d) / 4 + x.steelConductivity * Math.PI * s * (d + s);
    const fin = Math.sqrt((x.outside * Math.PI * (d + 2 * s)) / conductance);
    const length = x.ratio * d;
    const tip = x.room_degC + (x.main_degC - x.room_degC) / Math.cosh(fin * length);
    return {
      values: {
        tip_degC: tip,
        below: x.main_degC - tip,
        length_mm: length * 1000,
        finNumber: fin,
        volume_mL: (Math.PI / 4) * d * d * length * 1e6,
        diffusion_h: length ** 2 / x.diffusivity / 3600,
      },
    };
  },
});
