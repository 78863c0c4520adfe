import { liquid, saturationPressure } from './if97.ts';
import { conductivity, surfaceTension, viscosity } from './transport.ts';

export interface LiquidWater {
  readonly density: number;
  readonly viscosity: number;
  readonly heatCapacity: number;
  readonly conductivity: number;
  readonly surfaceTension: number;
  readonly saturationPressure: number;
  readonly enthalpy: number;
}

/** Liquid water at degC and Pa; the caller keeps to 0.01 to 200 degC and above the vapour pressure. SI results. */
export function liquidWater(temperature_degC: number, pressure = 101325): LiquidWater {
  const temperature = temperature_degC + 273.15;
  const state = liquid(temperature, pressure);
  const density = 1 / state.volume;
  return {
    density,
    viscosity: viscosity(temperature, density),
    heatCapacity: state.heatCapacity,
    conductivity: conductivity(temperature, density),
    surfaceTension: surfaceTension(temperature),
    saturationPressure: saturationPressure(temperature),
    enthalpy: state.enthalpy,
  };
}

/** Standard gravity, 3rd CGPM (1901), m/s2. */
export const gravity = 9.80665;
