/** What the two calculations of a water pipe share: inputs, outputs, words and the solution at a speed. */
import { refuse } from '../calculation/calculation.ts';
import { number, type ValuesOf } from '../calculation/inputs.ts';
import { saturationPressure } from '../water/if97.ts';
import { regimeWarning } from './friction.ts';
import { boiling, bore, linePressure, roughness, waterTemperature } from './pipe-inputs.ts';
import { areaOf, pipeState } from './pipe-state.ts';

export const outputs = {
  wallShear: { symbol: 'tau_w', label: 'wall shear', unit: 'Pa' },
  speed: { symbol: 'v', label: 'mean speed', unit: 'm/s' },
  flow_m3h: { symbol: 'Q', label: 'flow', unit: 'm3/h' },
  reynolds: { symbol: 'Re', label: 'Reynolds number', unit: '1' },
  friction: { symbol: 'f', label: 'Darcy friction factor', unit: '1' },
  gradient: { symbol: 'dp/L', label: 'pressure loss per length', unit: 'Pa/m' },
  loss_kPa: { symbol: 'dp', label: 'pressure loss of the straight pipe', unit: 'kPa' },
} as const;

export const inputs = {
  bore_mm: bore,
  length: number('L', 'length of straight pipe', 'm', {
    default: 1,
    min: 0,
    max: 1e5,
    from: 'one of its unit',
  }),
  roughness_um: roughness,
  temperature_degC: waterTemperature,
  pressure_kPa: linePressure,
};

export const equation = [
  'v = Q / (pi d^2 / 4), Re = rho v d / mu',
  'Colebrook: 1/sqrt(f) = -2 log10(eps/(3.7 d) + 2.51/(Re sqrt(f))); 64/Re when laminar',
  'tau_w = f rho v^2 / 8, dp = f (L/d) rho v^2 / 2',
];
export const validity =
  'Water in straight, full, round pipe away from fittings; steady flow. Between Re 2300 and 4000 the friction is interpolated.';
export const source = 'C. F. Colebrook, J. Inst. Civ. Eng. 11 (1939) 133; water by IAPWS R7-97, R12-08';

export function solve(speed: number, x: ValuesOf<typeof inputs>) {
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
