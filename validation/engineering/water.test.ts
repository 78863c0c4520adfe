/** Water, steam and solutions against the IAPWS releases and an independent implementation of them. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  liquid,
  saturationPressure,
  saturationTemperature,
  steam,
} from '../../packages/engineering/src/water/if97.ts';
import { solutionDensity, solutionViscosity } from '../../packages/engineering/src/water/laliberte.ts';
import { conductivity, surfaceTension, viscosity } from '../../packages/engineering/src/water/transport.ts';
import { type CheckRow, checkRows } from './check.ts';

interface Reference {
  readonly liquid: readonly Readonly<Record<string, number>>[];
  readonly saturated: readonly Readonly<Record<string, number>>[];
}
const reference = JSON.parse(
  readFileSync(new URL('./reference/water.json', import.meta.url), 'utf8'),
) as Reference;

const relative = (value: number, expected: number) => Math.abs(value / expected - 1);

describe('verification tables of the releases (printed with 9 digits, so 1e-8)', () => {
  // IAPWS R7-97(2012), table 5: region 1.
  it.each([
    [300, 3e6, 0.100215168e-2, 115.331273e3, 0.392294792e3, 4.17301218e3],
    [300, 80e6, 0.971180894e-3, 184.142828e3, 0.368563852e3, 4.01008987e3],
    [500, 3e6, 0.1202418e-2, 975.542239e3, 2.58041912e3, 4.65580682e3],
  ])('IF97 region 1 at %f K, %f Pa', (t, p, v, h, s, cp) => {
    const state = liquid(t, p);
    expect(relative(state.volume, v)).toBeLessThan(1e-8);
    expect(relative(state.enthalpy, h)).toBeLessThan(1e-8);
    expect(relative(state.entropy, s)).toBeLessThan(1e-8);
    expect(relative(state.heatCapacity, cp)).toBeLessThan(1e-8);
  });

  // IAPWS R7-97(2012), table 15: region 2.
  it.each([
    [300, 0.0035e6, 0.394913866e2, 2549.91145e3, 8.52238967e3, 1.91300162e3],
    [700, 0.0035e6, 0.923015898e2, 3335.68375e3, 10.1749996e3, 2.08141274e3],
    [700, 30e6, 0.542946619e-2, 2631.49474e3, 5.17540298e3, 10.3505092e3],
  ])('IF97 region 2 at %f K, %f Pa', (t, p, v, h, s, cp) => {
    const state = steam(t, p);
    expect(relative(state.volume, v)).toBeLessThan(1e-8);
    expect(relative(state.enthalpy, h)).toBeLessThan(1e-8);
    expect(relative(state.entropy, s)).toBeLessThan(1e-8);
    expect(relative(state.heatCapacity, cp)).toBeLessThan(1e-8);
  });

  // IAPWS R7-97(2012), tables 35 and 36: region 4.
  it.each([
    [300, 0.353658941e-2],
    [500, 0.263889776e1],
    [600, 0.123443146e2],
  ])('IF97 saturation pressure at %f K', (t, p) => {
    expect(relative(saturationPressure(t), p * 1e6)).toBeLessThan(1e-8);
  });
  it.each([
    [0.1, 372.755919],
    [1, 453.035632],
    [10, 584.149488],
  ])('IF97 saturation temperature at %f MPa', (p, t) => {
    expect(relative(saturationTemperature(p * 1e6), t)).toBeLessThan(1e-8);
  });

  // Check value P-02: IAPWS R12-08, table 4.
  it.each([
    [298.15, 998, 889.7351],
    [298.15, 1200, 1437.649467],
    [373.15, 1000, 307.883622],
  ])('viscosity at %f K, %f kg/m3', (t, rho, mu) => {
    expect(relative(viscosity(t, rho), mu * 1e-6)).toBeLessThan(1e-8);
  });

  // IAPWS R15-11, table 4, without critical enhancement (k2 = 1 in its notation).
  it('conductivity at 298.15 K', () => {
    expect(relative(conductivity(298.15, 998), 0.6077128675880629)).toBeLessThan(1e-8);
  });

  // IAPWS R1-76(2014), table 1: 74.22, 66.24, 48.74 mN/m, printed with 4 digits.
  it.each([
    [10, 74.22],
    [60, 66.24],
    [150, 48.74],
  ])('surface tension at %f degC', (t, sigma) => {
    expect(relative(surfaceTension(t + 273.15), sigma * 1e-3)).toBeLessThan(1e-4);
  });
});

describe('check values P-01, P-03, N-02, N-03', () => {
  const liquidRows: [number, number, number, number, number, number][] = [
    [10, 999.702, 1305.9, 4.19545, 1228.2, 74.221],
    [20, 998.206, 1001.6, 4.18479, 2339.2, 72.736],
    [40, 992.224, 652.73, 4.17855, 7384.4, 69.596],
    [60, 983.211, 466.04, 4.18276, 19945.8, 66.238],
    [70, 977.779, 403.56, 4.1881, 31200.6, 64.481],
    [80, 971.803, 354.06, 4.19552, 47414.7, 62.673],
    [85, 968.622, 333.08, 4.20001, 57867.5, 61.75],
    [90, 965.319, 314.18, 4.20502, 70182.4, 60.816],
  ];
  const rows: CheckRow[] = liquidRows.map(([t, rho, mu, cp, psat, sigma]) => ({
    id: `P-03-${t}`,
    calculation: 'water-properties',
    inputs: { temperature_degC: t },
    expected: {
      density: rho,
      viscosity: mu * 1e-6,
      heatCapacity: cp * 1000,
      saturationPressure: psat,
      surfaceTension: sigma * 1e-3,
    },
    tolerance: 4e-5,
    why: 'half of the last printed digit, 5 digits',
  }));
  rows.push({
    id: 'P-01',
    calculation: 'water-properties',
    inputs: { temperature_degC: 26.85, pressure_kPa: 3000 },
    expected: { density: 1 / 0.100215168e-2, enthalpy: 115331.273, heatCapacity: 4173.01218 },
    tolerance: 1e-8,
    why: 'printed with 9 digits',
  });
  const steamRows: [number, number, number, number, number][] = [
    [101.325, 99.9743, 2256.541, 2675.531, 1.673295],
    [300, 133.5254, 2163.436, 2724.892, 0.605785],
    [400, 143.6125, 2133.333, 2738.057, 0.462392],
    [500, 151.8362, 2107.922, 2748.108, 0.374804],
    [1000, 179.8856, 2014.437, 2777.12, 0.194349],
  ];
  for (const [p, t, hfg, hg, vg] of steamRows)
    rows.push({
      id: `N-02-${p}`,
      calculation: 'steam-at-pressure',
      inputs: { pressure_kPa: p },
      expected: { temperature_degC: t, evaporation_kJkg: hfg, steamEnthalpy_kJkg: hg, steamVolume: vg },
      tolerance: 3e-6,
      why: 'printed with 6 to 7 digits',
    });
  for (const [t, p] of [
    [121.1, 205.685],
    [134, 304.199],
    [140, 361.501],
  ])
    rows.push({
      id: `N-03 ${t} degC`,
      calculation: 'steam-at-temperature',
      inputs: { temperature_degC: t },
      expected: { pressure_kPa: p },
      tolerance: 3e-6,
      why: 'printed with 6 digits',
    });
  checkRows(rows);
});

describe('python3-iapws 1.5.3, table written by reference/water.py', () => {
  checkRows(
    reference.liquid.map(({ degC, kPa, ...expected }) => ({
      id: `liquid ${degC} degC ${kPa} kPa`,
      calculation: 'water-properties',
      inputs: { temperature_degC: degC, pressure_kPa: kPa },
      expected,
      tolerance: 1e-9,
      why: 'same formulation in double precision',
    })),
  );
  checkRows(
    reference.saturated.map(({ kPa, ...expected }) => ({
      id: `saturated ${kPa} kPa`,
      calculation: 'steam-at-pressure',
      inputs: { pressure_kPa: kPa },
      expected,
      tolerance: 1e-9,
      why: 'same formulation in double precision',
    })),
  );
});

describe('solutions', () => {
  it('Laliberte 2009: the first values of the spreadsheet, as an open-source property library prints them', () => {
    expect(relative(solutionDensity('nacl', 0.0037838838, 0), 1002.6250120185854)).toBeLessThan(1e-12);
    expect(relative(solutionViscosity('nacl', 0.00581, 5), 1.5285828581961414)).toBeLessThan(1e-12);
    expect(relative(solutionDensity('nacl', 0, 25), 997.0448954179155)).toBeLessThan(1e-12);
    expect(relative(solutionDensity('nacl', 0, 50), 988.0362916114763)).toBeLessThan(1e-12);
  });

  // Handbook densities from memory: a loose second look at the other solutes.
  checkRows([
    {
      id: 'CRC Handbook, NaOH 10 % at 20 degC, 1108.9 kg/m3, from memory',
      calculation: 'solution-density',
      inputs: { solute: 'naoh', concentration_pct: 10, temperature_degC: 20 },
      expected: { density: 1108.9 },
      tolerance: 0.002,
      why: 'fit scatter, and a value from memory',
    },
    {
      id: 'CRC Handbook, HNO3 10 % at 20 degC, 1054.3 kg/m3, from memory',
      calculation: 'solution-density',
      inputs: { solute: 'hno3', concentration_pct: 10, temperature_degC: 20 },
      expected: { density: 1054.3 },
      tolerance: 0.002,
      why: 'fit scatter, and a value from memory',
    },
    {
      id: 'ICUMSA tables, sucrose 20 % at 20 degC, 1080.97 kg/m3, from memory',
      calculation: 'solution-density',
      inputs: { solute: 'sucrose', concentration_pct: 20, temperature_degC: 20 },
      expected: { density: 1080.97 },
      tolerance: 0.001,
      why: 'fit scatter, and a value from memory',
    },
    {
      id: 'ICUMSA tables, sucrose 20 % at 20 degC, 1.945 mPa s, from memory',
      calculation: 'solution-viscosity',
      inputs: { solute: 'sucrose', concentration_pct: 20, temperature_degC: 20 },
      expected: { viscosity_mPas: 1.945 },
      tolerance: 0.02,
      why: 'fit scatter, and a value from memory',
    },
  ]);
});
