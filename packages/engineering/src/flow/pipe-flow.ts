import { calculation, refuse } from '../calculation/calculation.ts';
import { number, type ValuesOf } from '../calculation/inputs.ts';
import { saturationPressure } from '../water/if97.ts';
import { regimeWarning } from './friction.ts';
import { boiling, bore, linePressure, roughness, waterTemperature } from './pipe-inputs.ts';
import { areaOf, pipeState } from './pipe-state.ts';

const outputs = {
  wallShear: { symbol: 'tau_w', label: 'wall shear', unit: 'Pa' },
  speed: { symbol: 'v', label: 'mean speed', unit: 'm/s' },
  flow_m3h: { symbol: 'Q', label: 'flow', unit: 'm3/h' },
  reynolds: { symbol: 'Re', label: 'Reynolds number', unit: '1' },
  friction: { symbol: 'f', label: 'Darcy friction factor', unit: '1' },
  gradient: { symbol: 'dp/L', label: 'pressure loss per length', unit: 'Pa/m' },
  loss_kPa: { symbol: 'dp', label: 'pressure loss of the straight pipe', unit: 'kPa' },
} as const;

const inputs = {
  bore_mm: bore,
  length: number('L', 'length of straight pipe', 'm', { default: 1, min: 0, max: 1e5 }),
  roughness_um: roughness,
  temperature_degC: waterTemperature,
  pressure_kPa: linePressure,
};

const equation = [
  'v = Q / (pi d^2 / 4), Re = rho v d / mu',
  'Colebrook: 1/sqrt(f) = -2 log10(eps/(3.7 d) + 2.51/(Re sqrt(f))); 64/Re when laminar',
  'tau_w = f rho v^2 / 8, dp = f (L/d) rho v^2 / 2',
];
const validity =
  'Water in straight, full, round pipe away from fittings; steady flow. Between Re 2300 and 4000 the friction is interpolated.';
const source = 'C. F. Colebrook, J. Inst. Civ. Eng. 11 (1939) 133; water by IAPWS R7-97, R12-08';

function solve(speed: number, x: ValuesOf<typeof inputs>) {
  if (x.pressure_kPa * 1000 < saturationPressure(x.temperature_degC + 273.15))
    return refuse(boiling(x.temperature_degC, x.pressure_kPa));
  const state = pipeState(
    x.bore_mm / 1000,
    speed,
    x.roughness_um * 1e-6,
    x.temperature_degC,
    x.pressure_kPa * 1000,
  );
  return {
    values: {
      wallShear: state.wallShear,
      speed,
      flow_m3h: speed * areaOf(x.bore_mm / 1000) * 3600,
      reynolds: state.reynolds,
      friction: state.friction,
      gradient: state.gradient,
      loss_kPa: (state.gradient * x.length) / 1000,
    },
    warnings: regimeWarning(state.reynolds),
  };
}

export const pipeFlowAtSpeed = calculation({
  name: 'pipe-flow-at-speed',
  title: 'Water in a pipe at a given speed: shear and pressure loss',
  inputs: { ...inputs, speed: number('v', 'mean speed', 'm/s', { default: 1.5, min: 1e-4, max: 20 }) },
  outputs,
  equation,
  validity,
  source,
  example: {
    inputs: { bore_mm: 50, speed: 1.5, temperature_degC: 60, roughness_um: 0.8 },
    expected: {
      wallShear: 4.5608,
      flow_m3h: 10.6029,
      reynolds: 158227,
      friction: 0.016493,
      gradient: 364.86,
    },
    tolerance: 1e-4,
    source: 'check value P-07-DN50-60',
  },
  compute: (x) => solve(x.speed, x),
});

export const pipeFlow = calculation({
  name: 'pipe-flow',
  title: 'Water in a pipe at a given flow: speed, shear and pressure loss',
  inputs: { ...inputs, flow_m3h: number('Q', 'flow', 'm3/h', { min: 1e-5, max: 1e5 }) },
  outputs,
  equation,
  validity,
  source,
  example: {
    inputs: { bore_mm: 50, flow_m3h: 10.6029, temperature_degC: 80, roughness_um: 0.8 },
    expected: { speed: 1.5, reynolds: 205857, wallShear: 4.2862, gradient: 342.9 },
    tolerance: 1e-4,
    source: 'check value P-07-DN50-80',
  },
  compute: (x) => solve(x.flow_m3h / 3600 / areaOf(x.bore_mm / 1000), x),
});
