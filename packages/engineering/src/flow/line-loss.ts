import { calculation, refuse } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { saturationPressure } from '../water/if97.ts';
import { gravity } from '../water/properties.ts';
import { regimeWarning } from './friction.ts';
import { boiling, bore, roughness, waterTemperature } from './pipe-inputs.ts';
import { areaOf, pipeState } from './pipe-state.ts';

export const lineLoss = calculation({
  name: 'cleaning-line',
  title: 'A cleaning line: pressure, pump power and wall shear',
  inputs: {
    bore_mm: bore,
    speed: number('v', 'mean speed', 'm/s', {
      default: 1.5,
      min: 1e-3,
      max: 20,
      from: 'usual least speed of cleaning in place, common practice',
    }),
    length: number('L', 'length of pipe', 'm', { min: 0, max: 1e4 }),
    losses: number('sum K', 'sum of the loss coefficients of fittings, valves and exit', '1', {
      default: 1,
      min: 0,
      max: 1e4,
      from: 'the exit alone',
    }),
    lift: number('dz', 'static lift', 'm', { default: 0, min: -100, max: 100, from: 'none when left empty' }),
    efficiency_pct: number('eta', 'efficiency of the pump', '%', {
      default: 55,
      min: 1,
      max: 100,
      from: 'common practice',
    }),
    temperature_degC: waterTemperature,
    pressure_kPa: number('p', 'absolute pressure in the line', 'kPa', {
      default: 300,
      min: 10,
      max: 5000,
      from: 'an example: give your own',
    }),
    roughness_um: roughness,
  },
  outputs: {
    total_kPa: { symbol: 'dp', label: 'pressure that the pump must add', unit: 'kPa' },
    power: { symbol: 'P', label: 'shaft power', unit: 'W' },
    wallShear: { symbol: 'tau_w', label: 'wall shear', unit: 'Pa' },
    flow_m3h: { symbol: 'Q', label: 'flow', unit: 'm3/h' },
    reynolds: { symbol: 'Re', label: 'Reynolds number', unit: '1' },
    friction: { symbol: 'f', label: 'Darcy friction factor', unit: '1' },
    frictionLoss: { symbol: 'dp_f', label: 'friction', unit: 'Pa' },
    minorLoss: { symbol: 'dp_K', label: 'fittings', unit: 'Pa' },
    staticLoss: { symbol: 'dp_z', label: 'static lift', unit: 'Pa' },
    head: { symbol: 'H', label: 'head', unit: 'm' },
  },
  equation: [
    'Re = rho v d / mu, f by Colebrook, tau_w = f rho v^2 / 8',
    'dp = (f L/d + sum K) rho v^2 / 2 + rho g dz',
    'P = dp Q / eta, H = dp / (rho g)',
  ],
  validity: 'One line of one bore with water, steady flow. Loss coefficients scatter by 20 % and more.',
  source: 'C. F. Colebrook, J. Inst. Civ. Eng. 11 (1939) 133; water by IAPWS R7-97, R12-08',
  example: {
    inputs: {
      bore_mm: 50,
      speed: 1.5,
      length: 60,
      losses: 7,
      lift: 4,
      temperature_degC: 80,
      pressure_kPa: 300,
    },
    expected: {
      total_kPa: 66.3536,
      power: 355.3,
      wallShear: 4.2866,
      frictionLoss: 20575.9,
      minorLoss: 7653.6,
      staticLoss: 38124,
      head: 6.962,
    },
    tolerance: 1e-4,
    source: 'worked problem WP1',
  },
  caution: 'Hot cleaning liquid under pressure scalds and burns: depressurise and drain before opening.',
  compute(x) {
    if (x.pressure_kPa * 1000 < saturationPressure(x.temperature_degC + 273.15))
      return refuse(boiling(x.temperature_degC, x.pressure_kPa));
    const state = pipeState(
      x.bore_mm / 1000,
      x.speed,
      x.roughness_um * 1e-6,
      x.temperature_degC,
      x.pressure_kPa * 1000,
    );
    const flow = x.speed * areaOf(x.bore_mm / 1000);
    const frictionLoss = state.gradient * x.length;
    const minorLoss = (x.losses * state.density * x.speed ** 2) / 2;
    const staticLoss = state.density * gravity * x.lift;
    const total = frictionLoss + minorLoss + staticLoss;
    return {
      values: {
        total_kPa: total / 1000,
        power: (total * flow) / (x.efficiency_pct / 100),
        wallShear: state.wallShear,
        flow_m3h: flow * 3600,
        reynolds: state.reynolds,
        friction: state.friction,
        frictionLoss,
        minorLoss,
        staticLoss,
        head: total / (state.density * gravity),
      },
      warnings: regimeWarning(state.reynolds),
    };
  },
});
