import { calculation, refuse } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { areaOf } from '../flow/pipe-state.ts';
import { liquid, saturationTemperature, steam } from '../water/if97.ts';
import { liquidWater } from '../water/properties.ts';

const waterPressure = 300000;

export const heatCircuit = calculation({
  name: 'heat-up-circuit',
  title: 'Heat, steam, fuel and CO2 to heat up a cleaning circuit',
  inputs: {
    tank_L: number('V_t', 'volume in the tank', 'L', { min: 0, max: 1e6 }),
    length: number('L', 'length of tube', 'm', { min: 0, max: 1e4 }),
    outside_mm: number('D', 'outside diameter of the tube', 'mm', {
      default: 53,
      min: 5,
      max: 500,
      from: 'an example: give your own',
    }),
    wall_mm: number('s', 'wall of the tube', 'mm', {
      default: 1.5,
      min: 0.5,
      max: 10,
      from: 'a usual size, common practice',
    }),
    tankSteel: number('m_t', 'steel of the tank', 'kg', {
      default: 0,
      min: 0,
      max: 1e5,
      from: 'none when left empty',
    }),
    cold_degC: number('T_1', 'cold', 'degC', {
      default: 15,
      min: 0.01,
      max: 130,
      from: 'an example: give your own',
    }),
    hot_degC: number('T_2', 'hot', 'degC', {
      default: 75,
      min: 0.01,
      max: 130,
      from: 'an example: give your own',
    }),
    loss_Wm: number('q', 'line loss at full temperature, half of it on average', 'W/m', {
      default: 89,
      min: 0,
      max: 2000,
      from: 'an example: give your own',
    }),
    time_min: number('t', 'heating time', 'min', {
      default: 20,
      min: 0.1,
      max: 1440,
      from: 'an example: give your own',
    }),
    steam_kPa: number('p_s', 'absolute pressure of the steam', 'kPa', {
      default: 400,
      min: 110,
      max: 2000,
      from: 'an example: give your own',
    }),
    boiler_pct: number('eta', 'efficiency of the boiler, net calorific value', '%', {
      default: 85,
      min: 10,
      max: 110,
      from: 'common practice',
    }),
    carbon_kgGJ: number('e', 'CO2 of the fuel per net energy', 'kg/GJ', {
      default: 56.1,
      min: 0,
      max: 200,
      from: 'natural gas, IPCC 2006, from memory',
    }),
    steelDensity: number('rho_s', 'density of the steel', 'kg/m3', {
      default: 7970,
      min: 2000,
      max: 9000,
      from: 'austenitic steel, EN 10088-1, from memory',
    }),
    steelHeat: number('c_s', 'heat capacity of the steel', 'J/(kg K)', {
      default: 500,
      min: 300,
      max: 1000,
      from: 'austenitic steel, EN 10088-1, from memory',
    }),
  },
  outputs: {
    heat_MJ: { symbol: 'Q', label: 'heat', unit: 'MJ' },
    steamMass: { symbol: 'm_st', label: 'steam, indirect heating', unit: 'kg' },
    fuel_MJ: { symbol: 'F', label: 'fuel', unit: 'MJ' },
    carbon: { symbol: 'CO2', label: 'CO2', unit: 'kg' },
    waterHeat_MJ: { symbol: 'Q_w', label: 'heat for the water', unit: 'MJ' },
    steelHeat_MJ: { symbol: 'Q_s', label: 'heat for the steel', unit: 'MJ' },
    lossHeat_MJ: { symbol: 'Q_l', label: 'heat lost while heating', unit: 'MJ' },
    waterMass: { symbol: 'm_w', label: 'water', unit: 'kg' },
    steelMass: { symbol: 'm_s', label: 'steel', unit: 'kg' },
    power_kW: { symbol: 'P', label: 'mean heating power', unit: 'kW' },
  },
  equation: [
    'm_w = rho(T_1) (V_t + L pi (D - 2s)^2/4), m_s = m_t + rho_s L pi s (D - s)',
    'Q = m_w (h(T_2) - h(T_1)) + m_s c_s (T_2 - T_1) + q L t / 2',
    'm_st = Q / h_fg(p_s), F = Q / eta, CO2 = e F, P = Q / t',
  ],
  validity:
    'Water-like liquid, indirect heating with condensate that leaves saturated; pumps, valves and the tank loss are left out.',
  source: 'Energy balance; IAPWS R7-97(2012); emission factors are inputs',
  example: {
    inputs: { tank_L: 400, length: 60, tankSteel: 120, hot_degC: 75 },
    expected: {
      heat_MJ: 140.107,
      steamMass: 65.675,
      fuel_MJ: 164.83,
      carbon: 9.247,
      waterHeat_MJ: 129.822,
      steelHeat_MJ: 7.082,
      lossHeat_MJ: 3.204,
      waterMass: 517.39,
      steelMass: 236.05,
    },
    tolerance: 1e-4,
    source: 'worked problem WP2',
  },
  caution: 'Steam and hot water scald.',
  compute(x) {
    if (x.hot_degC < x.cold_degC) return refuse('The hot temperature is below the cold one');
    const bore = (x.outside_mm - 2 * x.wall_mm) / 1000;
    if (bore <= 0) return refuse('The wall is thicker than the tube allows');
    const pressure = x.steam_kPa * 1000;
    const boiling = saturationTemperature(pressure);
    if (x.hot_degC + 273.15 >= boiling)
      return refuse(`Steam of ${x.steam_kPa} kPa cannot heat to ${x.hot_degC} degC`);
    const waterMass =
      liquidWater(x.cold_degC, waterPressure).density * (x.tank_L / 1000 + areaOf(bore) * x.length);
    const steelMass =
      x.tankSteel + x.steelDensity * Math.PI * x.wall_mm * (x.outside_mm - x.wall_mm) * 1e-6 * x.length;
    const rise =
      liquid(x.hot_degC + 273.15, waterPressure).enthalpy -
      liquid(x.cold_degC + 273.15, waterPressure).enthalpy;
    const water = waterMass * rise;
    const steel = steelMass * x.steelHeat * (x.hot_degC - x.cold_degC);
    const lost = (x.loss_Wm * x.length * x.time_min * 60) / 2;
    const heat = water + steel + lost;
    const evaporation = steam(boiling, pressure).enthalpy - liquid(boiling, pressure).enthalpy;
    const fuel = heat / (x.boiler_pct / 100);
    return {
      values: {
        heat_MJ: heat / 1e6,
        steamMass: heat / evaporation,
        fuel_MJ: fuel / 1e6,
        carbon: (x.carbon_kgGJ * fuel) / 1e9,
        waterHeat_MJ: water / 1e6,
        steelHeat_MJ: steel / 1e6,
        lossHeat_MJ: lost / 1e6,
        waterMass,
        steelMass,
        power_kW: heat / (x.time_min * 60) / 1000,
      },
    };
  },
});
