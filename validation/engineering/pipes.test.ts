/** Friction factors, pipes, tubes and fittings against check values and an independent library. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { colebrook1939, haaland1983, swameeJain1976 } from '../../packages/engineering/src/flow/friction.ts';
import { type CheckRow, checkRows } from './check.ts';

interface Reference {
  readonly friction: readonly Readonly<Record<string, number>>[];
  readonly contraction: readonly { readonly ratio: number; readonly K: number }[];
  readonly expansion: readonly { readonly ratio: number; readonly K: number }[];
  readonly bends: readonly Readonly<Record<string, number>>[];
}
const reference = JSON.parse(
  readFileSync(new URL('./reference/fittings.json', import.meta.url), 'utf8'),
) as Reference;

describe('friction factors', () => {
  const printed: [number, number, number, number, number][] = [
    [1e4, 0, 0.030883, 0.030886, 0.030972],
    [1e5, 0, 0.01799, 0.017825, 0.017863],
    [1e5, 1e-4, 0.018514, 0.018265, 0.018452],
    [1e5, 1e-3, 0.022175, 0.021966, 0.022342],
    [1e6, 1e-4, 0.013441, 0.013326, 0.013508],
    [5e4, 0.02, 0.049409, 0.049489, 0.04979],
  ];
  const methods = ['colebrook', 'haaland', 'swameeJain'] as const;
  checkRows(
    printed.flatMap(([reynolds, relativeRoughness, ...values]) =>
      methods.map((method, i) => ({
        id: `P-05-${reynolds}_e${relativeRoughness} ${method}`,
        calculation: 'friction-factor',
        inputs: { reynolds, relativeRoughness, method },
        expected: { factor: values[i] },
        tolerance: 4e-5,
        why: 'printed with 5 digits',
      })),
    ),
  );
  checkRows(
    reference.friction.flatMap(({ reynolds, relativeRoughness, ...values }) =>
      Object.entries(values).map(([method, factor]) => ({
        id: `python3-fluids Re ${reynolds} eps/D ${relativeRoughness} ${method}`,
        calculation: 'friction-factor',
        inputs: { reynolds, relativeRoughness, method },
        expected: { factor },
        tolerance: method === 'swameeJain' ? 2e-6 : 1e-9,
        why: 'same formula in double precision; that library writes 5.74 as 6.97^0.9',
      })),
    ),
  );

  it('P-06: Haaland stays within -1.42..+1.31 %, Swamee-Jain within -0.71..+3.36 % of Colebrook', () => {
    const range = (formula: (re: number, eps: number) => number) => {
      const found = [0, 0];
      for (let i = 0; i <= 220; i++)
        for (let j = -1; j <= 60; j++) {
          const reynolds = 4000 * 25000 ** (i / 220);
          const eps = j < 0 ? 0 : 1e-6 * 50000 ** (j / 60);
          const deviation = 100 * (formula(reynolds, eps) / colebrook1939(reynolds, eps) - 1);
          found[0] = Math.min(found[0], deviation);
          found[1] = Math.max(found[1], deviation);
        }
      return found;
    };
    // 0.05 % absolute: the extremes depend a little on the grid.
    const [hLow, hHigh] = range(haaland1983);
    expect(Math.abs(hLow + 1.42)).toBeLessThan(0.05);
    expect(Math.abs(hHigh - 1.31)).toBeLessThan(0.05);
    const [sLow, sHigh] = range(swameeJain1976);
    expect(Math.abs(sLow + 0.71)).toBeLessThan(0.05);
    expect(Math.abs(sHigh - 3.36)).toBeLessThan(0.05);
  });
});

describe('pipes and tubes', () => {
  const p07: [string, number, number, number, number, number, number, number][] = [
    ['DN25', 26, 60, 2.867, 82278, 0.018892, 5.2241, 803.7],
    ['DN40', 38, 60, 6.1242, 120253, 0.017443, 4.8233, 507.72],
    ['DN50', 50, 20, 10.6029, 74746, 0.019205, 5.3918, 431.34],
    ['DN50', 50, 60, 10.6029, 158227, 0.016493, 4.5608, 364.86],
    ['DN50', 50, 80, 10.6029, 205857, 0.015682, 4.2862, 342.9],
    ['DN65', 66, 60, 18.4744, 208860, 0.015607, 4.3158, 261.56],
    ['DN80', 81, 60, 27.8262, 256328, 0.014997, 4.1471, 204.8],
    ['DN100', 100, 20, 42.4115, 149492, 0.016622, 4.6667, 186.67],
    ['DN100', 100, 60, 42.4115, 316455, 0.014405, 3.9834, 159.34],
    ['DN100', 100, 80, 42.4115, 411713, 0.013736, 3.7544, 150.17],
  ];
  const rows: CheckRow[] = p07.map(
    ([dn, bore_mm, temperature_degC, flow_m3h, reynolds, friction, wallShear, gradient]) => ({
      id: `P-07-${dn}-${temperature_degC}`,
      calculation: 'pipe-flow-at-speed',
      inputs: { bore_mm, temperature_degC, speed: 1.5, roughness_um: 0.8 },
      expected: { flow_m3h, reynolds, friction, wallShear, gradient },
      tolerance: 5e-5,
      why: 'printed with 5 digits',
    }),
  );
  rows.push(
    {
      id: 'P-08 DN50',
      calculation: 'speed-for-wall-shear',
      inputs: { bore_mm: 50 },
      expected: { speed: 1.189 },
      tolerance: 5e-5,
      why: 'printed with 5 digits',
    },
    {
      id: 'P-08 DN100',
      calculation: 'speed-for-wall-shear',
      inputs: { bore_mm: 100 },
      expected: { speed: 1.2831 },
      tolerance: 5e-5,
      why: 'printed with 5 digits',
    },
    {
      id: 'P-14',
      calculation: 'fitting-loss',
      inputs: { kind: 'expansion', bore_mm: 50, otherBore_mm: 100 },
      expected: { coefficient: 0.5625 },
      tolerance: 1e-12,
      why: 'closed form',
    },
    {
      id: 'P-15',
      calculation: 'fitting-loss',
      inputs: { kind: 'contraction', bore_mm: 50, otherBore_mm: 100 },
      expected: { coefficient: 0.4956 },
      tolerance: 1e-4,
      why: 'printed with 4 digits',
    },
    {
      id: 'P-16',
      calculation: 'fitting-loss',
      inputs: { kind: 'entrance' },
      expected: { coefficient: 0.57 },
      tolerance: 1e-9,
      why: 'handbook value',
    },
    {
      id: 'P-17',
      calculation: 'fitting-loss',
      inputs: { kind: 'bend', friction: 0.02, radiusRatio: 1.5 },
      expected: { coefficient: 0.2426 },
      tolerance: 2e-4,
      why: 'printed with 4 digits',
    },
  );
  const p11: [string, number, number, number][] = [
    ['DN25', 26, 1.033, 7970],
    ['DN40', 38, 1.484, 7970],
    ['DN50', 50, 1.934, 7970],
    ['DN65', 66, 3.405, 7970],
    ['DN80', 81, 4.156, 7970],
    ['DN100', 100, 5.031, 7850],
    ['DN125', 125, 6.36, 7970],
    ['DN150', 150, 7.497, 7850],
  ];
  for (const [size, bore_mm, mass_kgm, density] of p11)
    rows.push({
      id: `P-11-${size}`,
      calculation: 'tube-size',
      inputs: { size, density },
      expected: { bore_mm, mass_kgm },
      tolerance: 4e-4,
      why: 'mass printed with 4 digits, steel density as there',
    });
  checkRows(rows);
  checkRows([
    ...reference.contraction.map(({ ratio, K }) => ({
      id: `python3-fluids contraction ${ratio}`,
      calculation: 'fitting-loss',
      inputs: { kind: 'contraction', bore_mm: 100 * ratio, otherBore_mm: 100 },
      expected: { coefficient: K },
      tolerance: 1e-9,
      why: 'same formula',
    })),
    ...reference.expansion.map(({ ratio, K }) => ({
      id: `python3-fluids enlargement ${ratio}`,
      calculation: 'fitting-loss',
      inputs: { kind: 'expansion', bore_mm: 100 * ratio, otherBore_mm: 100 },
      expected: { coefficient: K },
      tolerance: 1e-9,
      why: 'same formula',
    })),
    ...reference.bends.map(({ K, ...inputs }) => ({
      id: `python3-fluids bend ${inputs.angle_deg} deg r/d ${inputs.radiusRatio} f ${inputs.friction}`,
      calculation: 'fitting-loss',
      inputs: { kind: 'bend', ...inputs },
      expected: { coefficient: K },
      tolerance: 1e-9,
      why: 'same formula',
    })),
  ]);
});
