import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { liquid, saturationTemperature, steam } from './if97.ts';

export const saturatedSteam = calculation({
  name: 'steam-at-pressure',
  title: 'Saturated steam at a pressure',
  inputs: {
    pressure_kPa: number('p', 'absolute pressure', 'kPa', { min: 0.6113, max: 16529 }),
  },
  outputs: {
    temperature_degC: { symbol: 'T', label: 'saturation temperature', unit: 'degC' },
    evaporation_kJkg: { symbol: 'h_fg', label: 'evaporation enthalpy', unit: 'kJ/kg' },
    steamEnthalpy_kJkg: { symbol: 'h_g', label: 'enthalpy of the steam', unit: 'kJ/kg' },
    waterEnthalpy_kJkg: { symbol: 'h_f', label: 'enthalpy of the condensate', unit: 'kJ/kg' },
    steamVolume: { symbol: 'v_g', label: 'specific volume of the steam', unit: 'm3/kg' },
  },
  equation: [
    'T = T_sat(p), IF97 region 4',
    'h_f, h_g, v_g from IF97 regions 1 and 2 on the saturation line',
    'h_fg = h_g - h_f',
  ],
  validity:
    'Dry saturated steam free of air, 0.6113 kPa to 16.529 MPa absolute. Air in the steam lowers its temperature at the same pressure.',
  source: 'IAPWS R7-97(2012)',
  example: {
    inputs: { pressure_kPa: 400 },
    expected: {
      temperature_degC: 143.6125,
      evaporation_kJkg: 2133.333,
      steamEnthalpy_kJkg: 2738.057,
      steamVolume: 0.462392,
    },
    tolerance: 1e-5,
    source: 'check value N-02-0.4',
  },
  caution: 'Steam scalds: lock off, vent and cool before opening.',
  compute({ pressure_kPa }) {
    const pressure = pressure_kPa * 1000;
    const temperature = saturationTemperature(pressure);
    const water = liquid(temperature, pressure);
    const gas = steam(temperature, pressure);
    return {
      values: {
        temperature_degC: temperature - 273.15,
        evaporation_kJkg: (gas.enthalpy - water.enthalpy) / 1000,
        steamEnthalpy_kJkg: gas.enthalpy / 1000,
        waterEnthalpy_kJkg: water.enthalpy / 1000,
        steamVolume: gas.volume,
      },
    };
  },
});
