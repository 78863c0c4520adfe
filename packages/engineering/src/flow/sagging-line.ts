import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';

export const saggingLine = calculation({
  name: 'sagging-line',
  title: 'Does a sloped line that sags between its supports drain?',
  inputs: {
    slope_pct: number('s', 'slope between the supports', '%', {
      default: 1,
      min: 0,
      max: 100,
      from: 'common practice',
    }),
    span: number('L', 'distance of the supports', 'm', {
      default: 3,
      min: 0.05,
      max: 50,
      from: 'an example: give your own',
    }),
    sag_mm: number('f', 'sag in the middle', 'mm', { min: 0, max: 1000 }),
  },
  outputs: {
    depth_mm: { symbol: 'h', label: 'depth of the pool above the invert', unit: 'mm' },
    poolLength_mm: { symbol: 'L_p', label: 'length of the pool', unit: 'mm' },
    end_pct: { symbol: 's_e', label: 'fall at the downstream end; negative is uphill', unit: '%' },
    start_pct: { symbol: 's_0', label: 'fall at the upstream end', unit: '%' },
    allowedSag_mm: { symbol: 'f_max', label: 'greatest sag that still drains', unit: 'mm' },
  },
  equation: [
    'z(x) = -s x - 4 f (x/L)(1 - x/L), a parabola',
    'fall at the ends: s_0 = s + 4 f/L, s_e = s - 4 f/L; f_max = s L / 4',
    'uphill over b = (4 f/L - s) L^2/(8 f); h = b^2 4 f/L^2; L_p = 2 b, both not beyond the span',
  ],
  validity:
    'One span that carries nothing but itself, parabolic sag, line spills over the downstream support.',
  source: 'Geometry of a parabola',
  example: {
    inputs: { slope_pct: 1, span: 3, sag_mm: 12 },
    expected: { end_pct: -0.6, depth_mm: 1.6875, poolLength_mm: 1125 },
    tolerance: 1e-9,
    source: 'closed form: -1 % + 4 x 12/3000 = +0.6 % uphill, pool 1.69 mm deep and 1125 mm long',
  },
  compute({ slope_pct, span, sag_mm }) {
    const s = slope_pct / 100;
    const f = sag_mm / 1000;
    const rise = (4 * f) / span;
    // Distance from the lowest point to the downstream support, over which the line runs uphill.
    const uphill = rise > s ? ((rise - s) * span ** 2) / (8 * f) : 0;
    return {
      values: {
        depth_mm: uphill ** 2 * ((4 * f) / span ** 2) * 1000,
        poolLength_mm: 2 * uphill * 1000,
        end_pct: 100 * (s - rise),
        start_pct: 100 * (s + rise),
        allowedSag_mm: 1000 * ((s * span) / 4),
      },
      warnings: uphill > 0 ? ['The line keeps a pool: support it more closely or give it more slope.'] : [],
    };
  },
});
