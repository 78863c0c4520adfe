import { number } from '../calculation/inputs.ts';

/** Inputs that the pipe calculations share. */
export const bore = number('d', 'bore', 'mm', { min: 1, max: 1000 });
export const roughness = number('eps', 'roughness, taken as sand roughness', 'um', {
  default: 0.8,
  min: 0,
  max: 1000,
  from: 'Ra of a hygienic tube, common practice',
});
export const waterTemperature = number('T', 'water temperature', 'degC', {
  default: 60,
  from: 'warm rinse, common practice',
  min: 0.01,
  max: 150,
});
export const linePressure = number('p', 'absolute pressure in the line', 'kPa', {
  default: 101.325,
  from: 'standard atmosphere, ISO 2533',
  min: 10,
  max: 5000,
});
export const boiling = (temperature_degC: number, pressure_kPa: number) =>
  `At ${temperature_degC} degC and ${pressure_kPa} kPa water boils: give a higher pressure`;
