import { calculation } from '../calculation/calculation.ts';
import { choice, number } from '../calculation/inputs.ts';
import { compatibility, elastomers, media } from './compatibility-table.ts';

const grades = { suitable: 2, limited: 1, unsuitable: 0 } as const;
const unknown = -1;

export const sealCompatibility = calculation({
  name: 'seal-compatibility',
  title: 'Seal or cable jacket against a cleaning medium',
  inputs: {
    material: choice('material', elastomers),
    medium: choice('medium', media),
    concentration_pct: number('w', 'concentration by mass; free chlorine too: 500 ppm is 0.05 %', '%', {
      default: 1,
      min: 0,
      max: 100,
      from: 'an example: give your own',
    }),
    temperature_degC: number('T', 'temperature', 'degC', {
      default: 20,
      min: -40,
      max: 250,
      from: 'a room, common practice',
    }),
    contact_min: number('t', 'contact time a day', 'min', {
      default: 30,
      min: 0,
      max: 1440,
      from: 'an example: give your own',
    }),
  },
  outputs: {
    verdict: {
      symbol: 'v',
      label: 'verdict',
      unit: '1',
      words: { 2: 'suitable', 1: 'limited', 0: 'not suitable', [-1]: 'unknown' },
    },
    coveredTo_pct: {
      symbol: 'w_max',
      label: 'concentration up to which the row holds; 0 when unknown',
      unit: '%',
    },
    coveredTo_degC: {
      symbol: 'T_max',
      label: 'temperature up to which the row holds; 0 when unknown',
      unit: 'degC',
    },
    exposure_hyr: { symbol: 't_y', label: 'contact a year', unit: 'h/yr' },
  },
  equation: [
    'first row of the table for material and medium that covers concentration and temperature; none: unknown, never "fine"',
    't_y = 365 t',
  ],
  validity:
    'Common grades. Compound, filler, hardness and dynamic load decide: the data of the supplier for the compound override this table.',
  source:
    'Handbook consensus, from memory; temperature limits of elastomers from a technical-support table (secondary copy)',
  example: {
    inputs: { material: 'fkm', medium: 'naoh', concentration_pct: 2, temperature_degC: 80, contact_min: 40 },
    expected: { verdict: 0, exposure_hyr: 365 * (40 / 60) },
    tolerance: 1e-9,
    source: 'check value M-12-02: hot alkali attacks FKM; 40 min a day are 243 h a year',
  },
  compute(x) {
    const rows = compatibility[x.material][x.medium] ?? [];
    const row = rows.find((r) => x.concentration_pct <= r.upTo_pct && x.temperature_degC <= r.upTo_degC);
    const verdict = row === undefined ? unknown : grades[row.verdict];
    return {
      values: {
        verdict,
        coveredTo_pct: row?.upTo_pct ?? 0,
        coveredTo_degC: row?.upTo_degC ?? 0,
        exposure_hyr: (365 * x.contact_min) / 60,
      },
      warnings: [
        ...(verdict === unknown
          ? ['Unknown at this concentration and temperature: ask the supplier, do not take it as suitable.']
          : []),
        ...(verdict === grades.limited
          ? ['Limited: inspect hardness, swelling and cracks, and replace on a schedule.']
          : []),
        ...(verdict === grades.unsuitable ? ['Not suitable: change the material or the medium.'] : []),
        'The table is from memory: the data sheet of the compound overrides it.',
      ],
    };
  },
});
