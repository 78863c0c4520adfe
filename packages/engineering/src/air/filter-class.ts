import { calculation } from '../calculation/calculation.ts';
import { choice, number } from '../calculation/inputs.ts';

/** EN 1822-1, efficiency at the most penetrating particle size: integral and local penetration (secondary copy). */
const penetration = {
  E11: [5e-2, 0],
  E12: [5e-3, 0],
  H13: [5e-4, 2.5e-3],
  H14: [5e-5, 2.5e-4],
  U15: [5e-6, 2.5e-5],
  U16: [5e-7, 2.5e-6],
  U17: [5e-8, 1e-6],
} as const;

export const filterClass = calculation({
  name: 'filter-penetration',
  title: 'What a high-efficiency filter lets through (EN 1822, ISO 29463)',
  inputs: {
    filterClass: choice('filter class', {
      E11: 'E11 (EN 1822)',
      E12: 'E12',
      H13: 'H13, ISO 35 H',
      H14: 'H14, ISO 45 H',
      U15: 'U15, ISO 55 U',
      U16: 'U16, ISO 65 U',
      U17: 'U17, ISO 75 U',
    }),
    upstream_1m3: number('C_u', 'particles upstream of the filter', '1/m3', {
      default: 1e6,
      min: 0,
      max: 1e12,
      from: 'an example: give your own',
    }),
    flow_m3h: number('Q', 'air flow', 'm3/h', {
      default: 1000,
      min: 0,
      max: 1e6,
      from: 'an example: give your own',
    }),
  },
  outputs: {
    downstream_1m3: { symbol: 'C_d', label: 'particles downstream, at most', unit: '1/m3' },
    penetration_pct: { symbol: 'P', label: 'penetration', unit: '%' },
    efficiency_pct: { symbol: 'E', label: 'efficiency at the most penetrating size', unit: '%' },
    local_pct: { symbol: 'E_l', label: 'lowest local efficiency; 0 where none is tested', unit: '%' },
    perHour_1h: { symbol: 'n', label: 'particles that pass', unit: '1/h' },
  },
  equation: ['C_d = P C_u, E = 1 - P, n = C_d Q'],
  validity:
    'Intact filter without leak at its frame, particles of the most penetrating size (about 0.1 to 0.2 um); larger and smaller ones are held better.',
  source: 'EN 1822-1, ISO 29463-1 (secondary copies)',
  example: {
    inputs: { filterClass: 'H14', upstream_1m3: 1e6 },
    expected: { downstream_1m3: 50, efficiency_pct: 99.995, local_pct: 99.975 },
    tolerance: 1e-12,
    source: 'check value A-12-H14',
  },
  compute(x) {
    const [whole, local] = penetration[x.filterClass];
    const downstream = whole * x.upstream_1m3;
    return {
      values: {
        downstream_1m3: downstream,
        penetration_pct: 100 * whole,
        efficiency_pct: 100 * (1 - whole),
        local_pct: local === 0 ? 0 : 100 * (1 - local),
        perHour_1h: downstream * x.flow_m3h,
      },
    };
  },
});
