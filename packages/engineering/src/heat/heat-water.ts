import { calculation, refuse } from '../calculation/calculation.ts';
import { choice, number } from '../calculation/inputs.ts';
import { liquid, saturationTemperature, steam } from '../water/if97.ts';

/** Pressure at which the water is heated, Pa: high enough for the liquid up to 130 degC. */
const waterPressure = 300000;

export const heatWater = calculation({
  name: 'heat-water-with-steam',
  title: 'Heat and steam to warm up water',
  inputs: {
    mass: number('m', 'mass of water', 'kg', { min: 0, max: 1e7 }),
    cold_degC: number('T_1', 'cold', 'degC', {
      default: 15,
      min: 0.01,
      max: 130,
      from: 'an example: give your own',
    }),
    hot_degC: number('T_2', 'hot', 'degC', {
      default: 80,
      min: 0.01,
      max: 130,
      from: 'an example: give your own',
    }),
    steam_kPa: number('p_s', 'absolute pressure of the steam', 'kPa', {
      default: 400,
      min: 110,
      max: 2000,
      from: 'an example: give your own',
    }),
    way: choice(
      'way of heating',
      { indirect: 'heat exchanger, condensate leaves saturated', direct: 'steam injected into the water' },
      { default: 'indirect' },
    ),
  },
  outputs: {
    heat_kWh: { symbol: 'Q', label: 'heat', unit: 'kWh' },
    steamMass: { symbol: 'm_s', label: 'steam', unit: 'kg' },
    perKelvin_kJkgK: { symbol: 'cp_m', label: 'mean heat capacity', unit: 'kJ/(kg K)' },
  },
  equation: [
    'Q = m (h(T_2) - h(T_1)), IF97 at 0.3 MPa',
    'indirect: m_s = Q / h_fg(p_s); direct: m_s = Q / (h_g(p_s) - h(T_2))',
  ],
  validity: 'No losses, dry saturated steam. Steam for direct heating must be fit for contact with product.',
  source: 'Energy balance; IAPWS R7-97(2012)',
  example: {
    inputs: { mass: 1000, cold_degC: 15, hot_degC: 80, steam_kPa: 400, way: 'direct' },
    expected: { heat_kWh: 75.5224, steamMass: 113.146 },
    tolerance: 5e-6,
    source: 'check values N-01 and N-04',
  },
  caution: 'Steam and hot water scald.',
  compute({ mass, cold_degC, hot_degC, steam_kPa, way }) {
    if (hot_degC < cold_degC) return refuse('The hot temperature is below the cold one');
    const pressure = steam_kPa * 1000;
    const boiling = saturationTemperature(pressure);
    if (hot_degC + 273.15 >= boiling)
      return refuse(
        `Steam of ${steam_kPa} kPa condenses at ${(boiling - 273.15).toFixed(1)} degC and cannot heat water to ${hot_degC} degC`,
      );
    const hot = liquid(hot_degC + 273.15, waterPressure).enthalpy;
    const heat = mass * (hot - liquid(cold_degC + 273.15, waterPressure).enthalpy);
    const gas = steam(boiling, pressure).enthalpy;
    const given = way === 'direct' ? gas - hot : gas - liquid(boiling, pressure).enthalpy;
    return {
      values: {
        heat_kWh: heat / 3.6e6,
        steamMass: heat / given,
        perKelvin_kJkgK:
          hot_degC === cold_degC || mass === 0 ? 0 : heat / mass / (hot_degC - cold_degC) / 1000,
      },
    };
  },
});
