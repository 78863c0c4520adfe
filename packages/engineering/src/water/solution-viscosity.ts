import { calculation, refuse } from '../calculation/calculation.ts';
import { fitOf, solutionViscosity as viscosityOf } from './laliberte.ts';
import { beyondFit, concentration, solute, solutionCaution, solutionTemperature } from './solution-inputs.ts';

export const solutionViscosity = calculation({
  name: 'solution-viscosity',
  title: 'Viscosity of cleaning, sugar and salt solutions (Laliberte 2009)',
  inputs: { solute, concentration_pct: concentration, temperature_degC: solutionTemperature },
  outputs: {
    viscosity_mPas: { symbol: 'mu', label: 'dynamic viscosity', unit: 'mPa s' },
    waterViscosity_mPas: {
      symbol: 'mu_w',
      label: 'viscosity of the water alone, in that paper',
      unit: 'mPa s',
    },
    ratio: { symbol: 'mu/mu_w', label: 'ratio of the two', unit: '1' },
  },
  equation: [
    'ln mu = (1 - w) ln mu_w + w ln mu_s, mu_s = exp((v1 w^v2 + v3) / (v4 T + 1)) / (v5 w^v6 + 1) mPa s',
  ],
  validity:
    'One solute in water within the data of the fit: NaOH 12.5 to 70 degC and 56 %, HNO3 4 to 25 degC and 30 %, H3PO4 20 to 25 degC and 80 %, sucrose 15 to 55 degC and 50 %, NaCl 5 to 154 degC and 26 %. Beyond it refuses.',
  source:
    'M. Laliberte, J. Chem. Eng. Data 54 (2009) 1725 (coefficients as reproduced in an open-source property library)',
  example: {
    inputs: { solute: 'nacl', concentration_pct: 0.581, temperature_degC: 5 },
    expected: { viscosity_mPas: 1.5285828581961414 },
    tolerance: 1e-12,
    source: 'first value of the spreadsheet of that paper, as the library prints it',
  },
  caution: solutionCaution,
  compute({ solute: kind, concentration_pct, temperature_degC }) {
    const objection = beyondFit('viscosity', fitOf(kind).viscosityRange, temperature_degC, concentration_pct);
    if (objection !== undefined) return refuse(objection);
    const viscosity = viscosityOf(kind, concentration_pct / 100, temperature_degC);
    const water = viscosityOf(kind, 0, temperature_degC);
    return { values: { viscosity_mPas: viscosity, waterViscosity_mPas: water, ratio: viscosity / water } };
  },
});
