import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { saturationPressure } from './if97.ts';

export const steamPressure = calculation({
  name: 'steam-at-temperature',
  title: 'Pressure of saturated steam at a temperature',
  inputs: {
    temperature_degC: number('T', 'temperature', 'degC', { min: 0.01, max: 350 }),
    ambient_kPa: number('p_amb', 'pressure of the surroundings', 'kPa', {
      default: 101.325,
      min: 50,
      max: 110,
      from: 'standard atmosphere, ISO 2533',
    }),
  },
  outputs: {
    pressure_kPa: { symbol: 'p', label: 'absolute pressure', unit: 'kPa' },
    gauge_kPa: { symbol: 'p_g', label: 'pressure above the surroundings', unit: 'kPa' },
  },
  equation: ['p = p_sat(T), IF97 region 4', 'p_g = p - p_amb'],
  validity: 'Saturated steam free of air, 0.01 to 350 degC.',
  source: 'IAPWS R7-97(2012)',
  example: {
    inputs: { temperature_degC: 121.1 },
    expected: { pressure_kPa: 205.685 },
    tolerance: 1e-5,
    source: 'check value N-03',
  },
  caution: 'Steam scalds: lock off, vent and cool before opening.',
  compute({ temperature_degC, ambient_kPa }) {
    const pressure = saturationPressure(temperature_degC + 273.15) / 1000;
    return { values: { pressure_kPa: pressure, gauge_kPa: pressure - ambient_kPa } };
  },
});
