/**
 * Water and steam by the IAPWS Industrial Formulation 1997 (IAPWS R7-97(2012)): regions 1 (liquid), 2 (steam) and
 * 4 (saturation). SI units throughout: K, Pa, m3/kg, J/kg, J/(kg K). The functions assume that the caller has
 * checked the region; `regionOf` says which one holds.
 */
import { region1, region2Ideal, region2Residual, region4 } from './if97-coefficients.ts';

/** Specific gas constant of the formulation, J/(kg K). */
const R = 461.526;

export interface WaterState {
  /** m3/kg */
  readonly volume: number;
  /** J/kg */
  readonly enthalpy: number;
  /** J/(kg K) */
  readonly entropy: number;
  /** Isobaric heat capacity, J/(kg K). */
  readonly heatCapacity: number;
}

/** Region 1: liquid, 273.15 to 623.15 K, from saturation to 100 MPa (equation 7). */
export function liquid(temperature: number, pressure: number): WaterState {
  const tau = 1386 / temperature;
  const pi = pressure / 16.53e6;
  const a = 7.1 - pi;
  const b = tau - 1.222;
  let g = 0;
  let gPi = 0;
  let gTau = 0;
  let gTauTau = 0;
  for (const [i, j, n] of region1) {
    const term = n * a ** i * b ** j;
    g += term;
    gPi -= (i * term) / a;
    gTau += (j * term) / b;
    gTauTau += (j * (j - 1) * term) / (b * b);
  }
  return {
    volume: (pi * gPi * R * temperature) / pressure,
    enthalpy: tau * gTau * R * temperature,
    entropy: R * (tau * gTau - g),
    heatCapacity: -R * tau * tau * gTauTau,
  };
}

/** Region 2: steam, up to 1073.15 K and to the saturation line or 100 MPa (equations 15 to 17). */
export function steam(temperature: number, pressure: number): WaterState {
  const tau = 540 / temperature;
  const pi = pressure / 1e6;
  let g = Math.log(pi);
  let gPi = 1 / pi;
  let gTau = 0;
  let gTauTau = 0;
  for (const [j, n] of region2Ideal) {
    const term = n * tau ** j;
    g += term;
    gTau += (j * term) / tau;
    gTauTau += (j * (j - 1) * term) / (tau * tau);
  }
  const b = tau - 0.5;
  for (const [i, j, n] of region2Residual) {
    const term = n * pi ** i * b ** j;
    g += term;
    gPi += (i * term) / pi;
    gTau += (j * term) / b;
    gTauTau += (j * (j - 1) * term) / (b * b);
  }
  return {
    volume: (pi * gPi * R * temperature) / pressure,
    enthalpy: tau * gTau * R * temperature,
    entropy: R * (tau * gTau - g),
    heatCapacity: -R * tau * tau * gTauTau,
  };
}

/** Saturation pressure in Pa, 273.15 to 647.096 K (equation 30). */
export function saturationPressure(temperature: number): number {
  const [n1, n2, n3, n4, n5, n6, n7, n8, n9, n10] = region4;
  const t = temperature + n9 / (temperature - n10);
  const a = t * t + n1 * t + n2;
  const b = n3 * t * t + n4 * t + n5;
  const c = n6 * t * t + n7 * t + n8;
  return 1e6 * ((2 * c) / (-b + Math.sqrt(b * b - 4 * a * c))) ** 4;
}

/** Saturation temperature in K, 611.213 Pa to 22.064 MPa (equation 31). */
export function saturationTemperature(pressure: number): number {
  const [n1, n2, n3, n4, n5, n6, n7, n8, n9, n10] = region4;
  const beta = (pressure / 1e6) ** 0.25;
  const e = beta * beta + n3 * beta + n6;
  const f = n1 * beta * beta + n4 * beta + n7;
  const g = n2 * beta * beta + n5 * beta + n8;
  const d = (2 * g) / (-f - Math.sqrt(f * f - 4 * e * g));
  return (n10 + d - Math.sqrt((n10 + d) ** 2 - 4 * (n9 + n10 * d))) / 2;
}
