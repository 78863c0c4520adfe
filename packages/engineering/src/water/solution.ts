import { calculation, refuse } from '../calculation/calculation.ts';
import { choice, number } from '../calculation/inputs.ts';
import { fitOf, solutionDensity, solutionViscosity } from './laliberte.ts';

function beyond(t: number, w: number, [low, high, most]: readonly [number, number, number]): boolean {
  return t < low || t > high || w > most;
}

export const solution = calculation({
  name: 'solution-properties',
  title: 'Density and viscosity of cleaning, sugar and salt solutions (Laliberte 2009)',
  inputs: {
    solute: choice(
      'dissolved matter',
      {
        naoh: 'sodium hydroxide',
        hno3: 'nitric acid',
        h3po4: 'phosphoric acid',
        sucrose: 'sucrose',
        nacl: 'sodium chloride',
      },
      { default: 'naoh' },
    ),
    concentration_pct: number('w', 'concentration by mass', '%', { min: 0, max: 85 }),
    temperature_degC: number('T', 'temperature', 'degC', { default: 20, min: 0, max: 120 }),
  },
  outputs: {
    density: { symbol: 'rho', label: 'density', unit: 'kg/m3' },
    viscosity_mPas: { symbol: 'mu', label: 'dynamic viscosity', unit: 'mPa s' },
    perVolume_gL: { symbol: 'c', label: 'dissolved mass per volume', unit: 'g/L' },
  },
  equation: [
    '1/rho = (1 - w)/rho_w + w/rho_s, rho_s = (c0 w + c1) exp(1e-6 (T + c4)^2) / (w + c2 + c3 T)',
    'ln mu = (1 - w) ln mu_w + w ln mu_s, mu_s = exp((v1 w^v2 + v3) / (v4 T + 1)) / (v5 w^v6 + 1) mPa s',
    'c = w rho',
  ],
  validity:
    'One solute in water within the data of the fit: NaOH 12.5 to 70 degC, HNO3 4 to 25 degC and 30 %, H3PO4 20 to 25 degC and 80 %, sucrose 15 to 55 degC and 50 %, NaCl 5 to 140 degC and 26 %. Beyond it refuses.',
  source:
    'M. Laliberte, J. Chem. Eng. Data 54 (2009) 1725 (coefficients as reproduced in an open-source property library)',
  example: {
    // Sucrose 20 % at 20 degC: 1080.97 kg/m3 and 1.945 mPa s in the ICUMSA tables (from memory).
    inputs: { solute: 'sucrose', concentration_pct: 20, temperature_degC: 20 },
    expected: { density: 1080.97, viscosity_mPas: 1.945 },
    tolerance: 0.02,
    source: 'ICUMSA tables, from memory; the fit itself is good to about 1 % in viscosity',
  },
  caution:
    'Lye and acid burn skin and eyes: wear what the safety data sheet asks for, add concentrate to water, never mix acid with chlorine products.',
  compute({ solute, concentration_pct, temperature_degC }) {
    const { densityRange, viscosityRange } = fitOf(solute);
    const w = concentration_pct / 100;
    const t = temperature_degC;
    const range = [densityRange, viscosityRange].find((r) => beyond(t, w, r));
    if (range !== undefined)
      return refuse(
        `The published fit reaches from ${range[0]} to ${range[1]} degC and to ${(100 * range[2]).toFixed(0)} %: at ${t} degC and ${concentration_pct} % use measured values`,
      );
    const density = solutionDensity(solute, w, t);
    return {
      values: { density, viscosity_mPas: solutionViscosity(solute, w, t), perVolume_gL: w * density },
    };
  },
});
