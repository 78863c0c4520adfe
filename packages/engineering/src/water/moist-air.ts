import { moistAir } from '../air/moist-air.ts';
import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { saturationTemperature } from './if97.ts';

export const moistAirState = calculation({
  name: 'moist-air',
  title: 'Moist air: dew point, moisture and density',
  inputs: {
    temperature_degC: number('T', 'air temperature', 'degC', {
      default: 20,
      min: 0.01,
      max: 90,
      from: 'a room, common practice',
    }),
    relativeHumidity_pct: number('RH', 'relative humidity', '%', {
      default: 60,
      min: 0.1,
      max: 100,
      from: 'a room in use, common practice',
    }),
    pressure_kPa: number('p', 'air pressure', 'kPa', {
      default: 101.325,
      min: 70,
      max: 110,
      from: 'standard atmosphere, ISO 2533',
    }),
  },
  outputs: {
    dewPoint_degC: { symbol: 'T_d', label: 'dew point', unit: 'degC' },
    vapourPressure: { symbol: 'p_v', label: 'vapour pressure', unit: 'Pa' },
    humidityRatio_gkg: { symbol: 'x', label: 'moisture per mass of dry air', unit: 'g/kg' },
    vapourDensity_gm3: { symbol: 'rho_v', label: 'moisture per volume', unit: 'g/m3' },
    density: { symbol: 'rho', label: 'density', unit: 'kg/m3' },
    enthalpy_kJkg: { symbol: 'h', label: 'enthalpy per mass of dry air', unit: 'kJ/kg' },
  },
  equation: [
    'p_v = RH p_sat(T)',
    'x = 0.622 p_v / (p - p_v)',
    'T_d = T_sat(p_v)',
    'h = 1.006 T + x (2501 + 1.86 T), T in degC',
  ],
  validity:
    'Ideal mixture of dry air and vapour above liquid water, 0.01 to 90 degC, within 0.5 % at 101 kPa (the enhancement factor is left out). A surface colder than the dew point gets wet.',
  source: 'IAPWS R7-97(2012); ASHRAE Handbook Fundamentals, chapter 1 (ideal-gas relations)',
  example: {
    inputs: { temperature_degC: 20, relativeHumidity_pct: 50 },
    // p_v = 1169.6 Pa; x = 0.62199 * 1169.6 / 100155.4 = 7.2635 g/kg; T_d from the saturation line.
    expected: { vapourPressure: 1169.6, humidityRatio_gkg: 7.2635, dewPoint_degC: 9.27 },
    tolerance: 1e-3,
    source: 'hand calculation from p_sat(20 degC) = 2339.2 Pa, check value P-03-20',
  },
  compute({ temperature_degC, relativeHumidity_pct, pressure_kPa }) {
    const air = moistAir(temperature_degC + 273.15, relativeHumidity_pct / 100, pressure_kPa * 1000);
    const dewPoint = air.vapourPressure >= 611.3 ? saturationTemperature(air.vapourPressure) - 273.15 : 0;
    return {
      values: {
        dewPoint_degC: dewPoint,
        vapourPressure: air.vapourPressure,
        humidityRatio_gkg: air.humidityRatio * 1000,
        vapourDensity_gm3: air.vapourDensity * 1000,
        density: air.density,
        enthalpy_kJkg: 1.006 * temperature_degC + air.humidityRatio * (2501 + 1.86 * temperature_degC),
      },
      warnings: air.vapourPressure < 611.3 ? ['The dew point lies below 0 degC; 0 degC is given.'] : [],
    };
  },
});
