import { calculation, refuse } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { liquidWater } from '../water/properties.ts';
import { evaporateAt, evaporateInsulated } from './evaporation.ts';

export const dryingTime = calculation({
  name: 'drying-time',
  title: 'Time for a puddle or film of water to dry in room air',
  inputs: {
    depth_mm: number('h', 'depth of the water', 'mm', { min: 0, max: 200 }),
    room_degC: number('T', 'room temperature', 'degC', {
      default: 20,
      min: 1,
      max: 60,
      from: 'a room, common practice',
    }),
    relativeHumidity_pct: number('RH', 'relative humidity', '%', {
      default: 60,
      min: 0,
      max: 100,
      from: 'a room in use, common practice',
    }),
    airSpeed: number('u', 'air speed over the surface', 'm/s', {
      default: 0.1,
      min: 0,
      max: 20,
      from: 'a room without draught, common practice',
    }),
    length_mm: number('L', 'length of the wet patch', 'mm', {
      default: 100,
      min: 5,
      max: 5000,
      from: 'an example: give your own',
    }),
    pressure_kPa: number('p', 'air pressure', 'kPa', {
      default: 101.325,
      min: 70,
      max: 110,
      from: 'standard atmosphere, ISO 2533',
    }),
  },
  outputs: {
    time_h: { symbol: 't', label: 'drying time, heat from the room air only (slowest)', unit: 'h' },
    fastest_h: {
      symbol: 't_min',
      label: 'drying time, surface held at room temperature (fastest)',
      unit: 'h',
    },
    rate_mmh: { symbol: 'r', label: 'fall of the water level, slowest case', unit: 'mm/h' },
    surface_degC: { symbol: 'T_s', label: 'temperature of the wet surface, slowest case', unit: 'degC' },
    massCoefficient: { symbol: 'h_m', label: 'mass transfer coefficient', unit: 'm/s' },
    heatCoefficient: { symbol: 'h_c', label: 'heat transfer coefficient', unit: 'W/(m2 K)' },
  },
  equation: [
    'Sh = 0.664 Re^(1/2) Sc^(1/3), above Re 5e5: (0.037 Re^0.8 - 871) Sc^(1/3); natural: 0.54 Ra^(1/4) or 0.15 Ra^(1/3) where the air rises, 0.27 Ra^(1/4) where it lies; still air: 4 D / (pi a); the largest counts',
    'h_c = h_m rho cp Le^(2/3)',
    'h_c (T - T_s) + eps sigma (T^4 - T_s^4) = h_m (rho_v,s - rho_v) h_fg gives T_s',
    't = h rho_w / (h_m (rho_v,s - rho_v))',
  ],
  validity:
    'Clean water with a free surface in an open room. Water in gaps, under product residue, or with sugar or salt dries far more slowly or not at all. Expect a factor of two between rooms; the two times bracket it.',
  source:
    'F. P. Incropera, D. P. DeWitt, Fundamentals of Heat and Mass Transfer, chapters 6, 7, 9; J. R. Lloyd, W. R. Moran, J. Heat Transfer 96 (1974) 443; W. J. Massman, Atmos. Environ. 32 (1998) 1111',
  example: {
    inputs: { depth_mm: 1, room_degC: 20, relativeHumidity_pct: 50, airSpeed: 1, length_mm: 100 },
    // By hand: Re 6.6e3, Sc 0.61, Sh 45.8, h_m 0.0113 m/s; rho_v 17.3 and 8.65 g/m3; 0.0978 g/(m2 s) -> 2.84 h.
    expected: { fastest_h: 2.84 },
    tolerance: 0.02,
    source: 'hand calculation of the isothermal case with tabulated air properties',
  },
  compute({ depth_mm, room_degC, relativeHumidity_pct, airSpeed, length_mm, pressure_kPa }) {
    if (relativeHumidity_pct >= 99.5)
      return refuse(
        'At a relative humidity of 99.5 % and more nothing dries: lower the humidity or warm the air',
      );
    const room = {
      temperature: room_degC + 273.15,
      relativeHumidity: relativeHumidity_pct / 100,
      pressure: pressure_kPa * 1000,
      airSpeed,
    };
    const slow = evaporateInsulated(room, length_mm / 1000, true);
    const fast = evaporateAt(room, room.temperature, length_mm / 1000);
    const mass = (depth_mm / 1000) * liquidWater(room_degC, room.pressure).density;
    return {
      values: {
        time_h: mass / slow.flux / 3600,
        fastest_h: mass / fast.flux / 3600,
        rate_mmh: depth_mm === 0 ? 0 : (depth_mm * slow.flux * 3600) / mass,
        surface_degC: slow.surfaceTemperature - 273.15,
        massCoefficient: slow.massCoefficient,
        heatCoefficient: slow.heatCoefficient,
      },
      warnings: [
        ...(relativeHumidity_pct > 90
          ? ['Above 90 % relative humidity a small error of the humidity changes the time many times over.']
          : []),
        ...(length_mm > 1000 && airSpeed < 0.3
          ? ['A patch longer than 1 m in slow air: the draughts of a real room dry it faster than this.']
          : []),
      ],
    };
  },
});
