import { calculation, refuse } from '../calculation/calculation.ts';
import { choice, number, text } from '../calculation/inputs.ts';
import { tubes } from './tube-table.ts';

export const tubeSize = calculation({
  name: 'tube-size',
  title: 'Bore, volume and mass of a standard hygienic tube',
  inputs: {
    standard: choice(
      'standard',
      {
        en10357a:
          'EN 10357 series A (DIN 11850 series 2; DIN 11866 series A has the same sizes, from memory)',
        asmebpe: 'ASME BPE (from memory)',
        iso2037: 'ISO 2037 (from memory)',
      },
      { default: 'en10357a' },
    ),
    size: text('nominal size', 'a size of that standard such as DN50, 2 or 51'),
    density: number('rho', 'density of the steel', 'kg/m3', {
      default: 7970,
      min: 2000,
      max: 9000,
      from: 'austenitic steel, EN 10088-1, from memory',
    }),
  },
  outputs: {
    bore_mm: { symbol: 'd', label: 'bore', unit: 'mm' },
    outside_mm: { symbol: 'D', label: 'outside diameter', unit: 'mm' },
    wall_mm: { symbol: 's', label: 'wall', unit: 'mm' },
    volume_Lm: { symbol: 'V/L', label: 'volume per length', unit: 'L/m' },
    mass_kgm: { symbol: 'm/L', label: 'mass per length', unit: 'kg/m' },
    surface_m2m: { symbol: 'A/L', label: 'inner surface per length', unit: 'm2/m' },
  },
  equation: ['d = D - 2 s', 'V/L = pi d^2 / 4', 'm/L = rho pi s (D - s)'],
  validity:
    'Nominal dimensions without tolerances. Sizes marked "from memory" must be checked against the standard.',
  source:
    'EN 10357:2014 (secondary copy of DIN 11850:1985, table 1); ASME BPE part DT and ISO 2037 from memory',
  example: {
    inputs: { standard: 'en10357a', size: 'DN50' },
    expected: { bore_mm: 50, mass_kgm: 1.934 },
    tolerance: 3e-4,
    source: 'check value P-11-DN50',
  },
  compute({ standard, size, density }) {
    const sizes = tubes[standard];
    const row = Object.hasOwn(sizes, size.trim()) ? sizes[size.trim()] : undefined;
    if (row === undefined)
      return refuse(
        `There is no size "${size}" in this standard, expected one of: ${Object.keys(sizes).join(', ')}`,
      );
    const bore = row.outside - 2 * row.wall;
    return {
      values: {
        bore_mm: bore,
        outside_mm: row.outside,
        wall_mm: row.wall,
        volume_Lm: (Math.PI / 4) * bore ** 2 * 1e-3,
        mass_kgm: density * Math.PI * row.wall * (row.outside - row.wall) * 1e-6,
        surface_m2m: Math.PI * bore * 1e-3,
      },
      warnings:
        standard === 'en10357a' ? [] : ['These sizes are from memory: check them against the standard.'],
    };
  },
});
