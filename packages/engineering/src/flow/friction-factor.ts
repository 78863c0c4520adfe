import { calculation, refuse } from '../calculation/calculation.ts';
import { choice, number } from '../calculation/inputs.ts';
import {
  churchill1977,
  frictionFactor,
  haaland1983,
  laminarLimit,
  regimeWarning,
  serghides1984,
  swameeJain1976,
  turbulentLimit,
} from './friction.ts';

const methods = {
  colebrook: frictionFactor,
  haaland: haaland1983,
  swameeJain: swameeJain1976,
  serghides: serghides1984,
  churchill: churchill1977,
};

export const frictionFactorDarcy = calculation({
  name: 'friction-factor',
  title: 'Darcy friction factor of a round pipe',
  inputs: {
    reynolds: number('Re', 'Reynolds number', '1', { min: 1, max: 1e9 }),
    relativeRoughness: number('eps/D', 'roughness over bore', '1', {
      default: 0,
      min: 0,
      max: 0.05,
      from: 'none when left empty',
    }),
    method: choice(
      'correlation',
      {
        colebrook: 'Colebrook 1939, exact; 64/Re when laminar; linear between Re 2300 and 4000',
        haaland: 'Haaland 1983',
        swameeJain: 'Swamee and Jain 1976',
        serghides: 'Serghides 1984',
        churchill: 'Churchill 1977, all regimes',
      },
      { default: 'colebrook' },
    ),
  },
  outputs: {
    factor: { symbol: 'f', label: 'Darcy friction factor', unit: '1' },
    fanning: { symbol: 'f_F', label: 'Fanning friction factor', unit: '1' },
    deviation_pct: { symbol: 'dev', label: 'deviation from Colebrook, from 64/Re when laminar', unit: '%' },
  },
  equation: [
    'Colebrook: 1/sqrt(f) = -2 log10(eps/(3.7 D) + 2.51/(Re sqrt(f)))',
    'Haaland: 1/sqrt(f) = -1.8 log10((eps/(3.7 D))^1.11 + 6.9/Re)',
    'Swamee-Jain: f = 0.25 / log10(eps/(3.7 D) + 5.74/Re^0.9)^2',
    'f = 4 f_F',
  ],
  validity:
    'Round pipes, fully developed flow, eps/D up to 0.05; explicit formulas from Re 4000 on (Churchill from 1). Haaland stays within 1.5 %, Swamee-Jain within 3.4 % of Colebrook.',
  source:
    'C. F. Colebrook, J. Inst. Civ. Eng. 11 (1939) 133; S. E. Haaland (1983); P. K. Swamee, A. K. Jain (1976); T. K. Serghides (1984); S. W. Churchill (1977)',
  example: {
    inputs: { reynolds: 1e5, relativeRoughness: 1e-4 },
    expected: { factor: 0.018514 },
    tolerance: 3e-5,
    source: 'check value P-05-100000_e0.0001, printed with 5 digits',
  },
  compute({ reynolds, relativeRoughness, method }) {
    const explicit = method === 'haaland' || method === 'swameeJain' || method === 'serghides';
    if (explicit && reynolds < laminarLimit)
      return refuse(
        `This formula holds for turbulent flow: at a Reynolds number of ${reynolds} choose colebrook or churchill`,
      );
    const factor = methods[method](reynolds, relativeRoughness);
    const exact = frictionFactor(reynolds, relativeRoughness);
    return {
      values: { factor, fanning: factor / 4, deviation_pct: 100 * (factor / exact - 1) },
      warnings: [
        ...regimeWarning(reynolds),
        ...(explicit && reynolds < turbulentLimit
          ? ['This formula holds for turbulent flow only, from Re 4000 on.']
          : []),
      ],
    };
  },
});
