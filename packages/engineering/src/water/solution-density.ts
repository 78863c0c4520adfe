import { calculation, refuse } from '../calculation/calculation.ts';
import { solutionDensity as densityOf, fitOf } from './laliberte.ts';
import { beyondFit, concentration, solute, solutionCaution, solutionTemperature } from './solution-inputs.ts';

export const solutionDensity = calculation({
  name: 'solution-density',
  title: 'Density of cleaning, sugar and salt solutions (Laliberte 2009)',
  inputs: { solute, concentration_pct: concentration, temperature_degC: solutionTemperature },
  outputs: {
    density: { symbol: 'rho', label: 'density', unit: 'kg/m3' },
    perVolume_gL: { symbol: 'c', label: 'dissolved mass per volume', unit: 'g/L' },
    waterDensity: { symbol: 'rho_w', label: 'density of the water alone, in that paper', unit: 'kg/m3' },
  },
  equation: [
    '1/rho = (1 - w)/rho_w + w/rho_s, rho_s = (c0 w + c1) exp(1e-6 (T + c4)^2) / (w + c2 + c3 T)',
    'c = w rho',
  ],
  validity:
    'One solute in water within the data of the fit: NaOH 4 to 120 degC and 50 %, HNO3 -10 to 95 degC and 70 %, H3PO4 16 to 81 degC and 85 %, sucrose 15 to 55 degC and 50 %, NaCl 0 to 140 degC and 26 %. Beyond it refuses.',
  source:
    'M. Laliberte, J. Chem. Eng. Data 54 (2009) 1725 (coefficients as reproduced in an open-source property library)',
  example: {
    inputs: { solute: 'nacl', concentration_pct: 0.37838838, temperature_degC: 0 },
    expected: { density: 1002.6250120185854 },
    tolerance: 1e-12,
    source: 'first value of the spreadsheet of that paper, as the library prints it',
  },
  caution: solutionCaution,
  compute({ solute: kind, concentration_pct, temperature_degC }) {
    const objection = beyondFit('density', fitOf(kind).densityRange, temperature_degC, concentration_pct);
    if (objection !== undefined) return refuse(objection);
    const w = concentration_pct / 100;
    const density = densityOf(kind, w, temperature_degC);
    return {
      values: { density, perVolume_gL: w * density, waterDensity: densityOf(kind, 0, temperature_degC) },
    };
  },
});
