import { airConductivity, airHeatCapacity, airViscosity, moistAir } from '../air/moist-air.ts';
import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { gravity } from '../water/properties.ts';

const stefanBoltzmann = 5.670374e-8;

/** S. W. Churchill, H. H. S. Chu, Int. J. Heat Mass Transfer 18 (1975) 1049: Nusselt number of a horizontal cylinder. */
export function churchillChuCylinder(rayleigh: number, prandtl: number): number {
  return (0.6 + (0.387 * rayleigh ** (1 / 6)) / (1 + (0.559 / prandtl) ** (9 / 16)) ** (8 / 27)) ** 2;
}

export const barePipeLoss = calculation({
  name: 'bare-pipe-heat-loss',
  title: 'Heat loss of a bare horizontal pipe in still air',
  inputs: {
    outside_mm: number('D', 'outside diameter', 'mm', { min: 5, max: 1000 }),
    wall_degC: number('T_w', 'temperature of the wall', 'degC', {
      default: 80,
      min: 1,
      max: 200,
      from: 'an example: give your own',
    }),
    room_degC: number('T_a', 'room temperature', 'degC', {
      default: 20,
      min: -10,
      max: 50,
      from: 'a room, common practice',
    }),
    emissivity: number('eps', 'emissivity of the surface', '1', {
      default: 0.3,
      min: 0.02,
      max: 1,
      from: 'ground stainless steel, common practice',
    }),
  },
  outputs: {
    loss_Wm: { symbol: 'q', label: 'heat loss per length', unit: 'W/m' },
    convection: { symbol: 'h_c', label: 'heat transfer coefficient by convection', unit: 'W/(m2 K)' },
    radiation: { symbol: 'h_r', label: 'heat transfer coefficient by radiation', unit: 'W/(m2 K)' },
    nusselt: { symbol: 'Nu', label: 'Nusselt number', unit: '1' },
    rayleigh: { symbol: 'Ra', label: 'Rayleigh number', unit: '1' },
  },
  equation: [
    'Ra = g (T_w - T_a) D^3 Pr / (T_m nu^2), properties of air at T_m = (T_w + T_a)/2',
    'Nu = (0.6 + 0.387 Ra^(1/6) / (1 + (0.559/Pr)^(9/16))^(8/27))^2, h_c = Nu k / D',
    'h_r = eps sigma (T_w^4 - T_a^4)/(T_w - T_a)',
    'q = (h_c + h_r) pi D (T_w - T_a)',
  ],
  validity: 'Horizontal pipe in still air, Ra up to 1e12. Draught doubles the loss.',
  source: 'S. W. Churchill, H. H. S. Chu, Int. J. Heat Mass Transfer 18 (1975) 1049; Stefan-Boltzmann',
  example: {
    inputs: { outside_mm: 53, wall_degC: 80, room_degC: 20, emissivity: 0.3 },
    expected: { loss_Wm: 89.03, convection: 6.595, nusselt: 12.4529 },
    tolerance: 0.01,
    source: 'check value P-30, computed there with tabulated air properties',
  },
  caution: 'Pipes above about 55 degC burn the skin on touch (ISO 13732-1).',
  compute({ outside_mm, wall_degC, room_degC, emissivity }) {
    const d = outside_mm / 1000;
    const hot = wall_degC + 273.15;
    const cold = room_degC + 273.15;
    const film = (hot + cold) / 2;
    const k = airConductivity(film);
    const nu = airViscosity(film) / moistAir(film, 0, 101325).density;
    const prandtl = (airViscosity(film) * airHeatCapacity) / k;
    const rayleigh = (gravity * Math.abs(hot - cold) * d ** 3 * prandtl) / (film * nu ** 2);
    const nusselt = churchillChuCylinder(rayleigh, prandtl);
    const convection = (nusselt * k) / d;
    const radiation = emissivity * stefanBoltzmann * (hot + cold) * (hot ** 2 + cold ** 2);
    return {
      values: {
        loss_Wm: (convection + radiation) * Math.PI * d * (hot - cold),
        convection,
        radiation,
        nusselt,
        rayleigh,
      },
    };
  },
});
