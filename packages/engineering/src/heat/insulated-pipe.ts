import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';

export const insulatedPipeLoss = calculation({
  name: 'insulated-pipe-heat-loss',
  title: 'Heat loss of an insulated pipe',
  inputs: {
    outside_mm: number('D', 'outside diameter of the tube', 'mm', { min: 5, max: 1000 }),
    insulation_mm: number('s', 'thickness of the insulation', 'mm', {
      default: 30,
      min: 0,
      max: 500,
      from: 'an example: give your own',
    }),
    conductivity: number('k', 'conductivity of the insulation', 'W/(m K)', {
      default: 0.04,
      min: 0.005,
      max: 1,
      from: 'mineral wool, common practice',
    }),
    outsideCoefficient: number('h', 'heat transfer coefficient outside', 'W/(m2 K)', {
      default: 8,
      min: 0.5,
      max: 100,
      from: 'common practice',
    }),
    wall_degC: number('T_w', 'temperature of the tube', 'degC', {
      default: 80,
      min: -20,
      max: 250,
      from: 'an example: give your own',
    }),
    room_degC: number('T_a', 'room temperature', 'degC', {
      default: 20,
      min: -20,
      max: 60,
      from: 'a room, common practice',
    }),
  },
  outputs: {
    loss_Wm: { symbol: 'q', label: 'heat loss per length', unit: 'W/m' },
    surface_degC: { symbol: 'T_s', label: 'temperature of the surface', unit: 'degC' },
  },
  equation: [
    'D_s = D + 2 s',
    'q = (T_w - T_a) / (ln(D_s/D)/(2 pi k) + 1/(pi D_s h))',
    'T_s = T_a + q/(pi D_s h)',
  ],
  validity:
    'Dry, closed insulation without bridges; fittings and supports add 10 to 30 %. Wet insulation is worse than none and a hygiene fault.',
  source: 'Radial conduction (J. Fourier); ISO 12241 for the practice',
  example: {
    inputs: {
      outside_mm: 53,
      insulation_mm: 30,
      conductivity: 0.04,
      outsideCoefficient: 8,
      wall_degC: 80,
      room_degC: 20,
    },
    expected: { loss_Wm: 17.833 },
    tolerance: 3e-5,
    source: 'check value P-31',
  },
  compute(x) {
    const d = x.outside_mm / 1000;
    const outer = d + (2 * x.insulation_mm) / 1000;
    const outside = 1 / (Math.PI * outer * x.outsideCoefficient);
    const loss =
      (x.wall_degC - x.room_degC) / (Math.log(outer / d) / (2 * Math.PI * x.conductivity) + outside);
    const surface = x.room_degC + loss * outside;
    return {
      values: { loss_Wm: loss, surface_degC: surface },
      warnings:
        surface > 55 ? ['The surface is hot enough to burn on touch (about 55 degC, ISO 13732-1).'] : [],
    };
  },
});
