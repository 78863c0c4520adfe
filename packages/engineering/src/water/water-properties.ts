import { calculation, refuse } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { saturationPressure } from './if97.ts';
import { liquidWater } from './properties.ts';

export const waterProperties = calculation({
  name: 'water-properties',
  title: 'Properties of liquid water',
  inputs: {
    temperature_degC: number('T', 'water temperature', 'degC', {
      default: 20,
      min: 0.01,
      max: 200,
      from: 'a room, common practice',
    }),
    pressure_kPa: number('p', 'absolute pressure', 'kPa', {
      default: 101.325,
      min: 0.62,
      max: 20000,
      from: 'standard atmosphere, ISO 2533',
    }),
  },
  outputs: {
    density: { symbol: 'rho', label: 'density', unit: 'kg/m3' },
    viscosity: { symbol: 'mu', label: 'dynamic viscosity', unit: 'Pa s' },
    heatCapacity: { symbol: 'cp', label: 'heat capacity', unit: 'J/(kg K)' },
    conductivity: { symbol: 'k', label: 'thermal conductivity', unit: 'W/(m K)' },
    prandtl: { symbol: 'Pr', label: 'Prandtl number', unit: '1' },
    surfaceTension: { symbol: 'sigma', label: 'surface tension', unit: 'N/m' },
    saturationPressure: { symbol: 'p_sat', label: 'vapour pressure', unit: 'Pa' },
    enthalpy: { symbol: 'h', label: 'enthalpy', unit: 'J/kg' },
  },
  equation: [
    'rho = 1/v, cp, h from the specific Gibbs free energy of IF97 region 1',
    'mu(T, rho) by IAPWS R12-08 with mu2 = 1',
    'k(T, rho) by IAPWS R15-11 without critical enhancement',
    'sigma = 0.2358 tau^1.256 (1 - 0.625 tau) N/m, tau = 1 - T/647.096 K',
    'p_sat by IF97 region 4; Pr = mu cp / k',
  ],
  validity:
    'Liquid water above its vapour pressure, 0.01 to 200 degC, up to 20 MPa; pure water, no dissolved matter.',
  source: 'IAPWS R7-97(2012), R12-08, R15-11, R1-76(2014)',
  example: {
    inputs: { temperature_degC: 20, pressure_kPa: 101.325 },
    expected: { density: 998.206, viscosity: 1.0016e-3, surfaceTension: 0.072736 },
    tolerance: 1e-4,
    source: 'check value P-03-20, recomputed with an independent IAPWS implementation',
  },
  compute({ temperature_degC, pressure_kPa }) {
    const pressure = pressure_kPa * 1000;
    const boiling = saturationPressure(temperature_degC + 273.15);
    if (pressure < boiling)
      return refuse(
        `At ${temperature_degC} degC and ${pressure_kPa} kPa water is steam: give a pressure above ${(boiling / 1000).toFixed(2)} kPa`,
      );
    const water = liquidWater(temperature_degC, pressure);
    return {
      values: { ...water, prandtl: (water.viscosity * water.heatCapacity) / water.conductivity },
    };
  },
});
