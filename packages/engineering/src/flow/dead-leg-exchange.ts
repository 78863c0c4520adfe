import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { bisect } from '../numeric/root.ts';

/**
 * Concentration at the closed end of a column over that at its mouth, after a step at the mouth, at the Fourier
 * number D t / L^2 (J. Crank, The Mathematics of Diffusion, equation 2.67). Terms fall off within 60 from 0.002 on;
 * below that the end has seen nothing (under 1e-27).
 */
export function tipConcentration(fourier: number): number {
  if (fourier < 0.002) return 0;
  let sum = 0;
  for (let n = 0; n < 60; n++) {
    const k = 2 * n + 1;
    const term = (n % 2 === 0 ? 1 : -1) / k;
    sum += term * Math.exp((-(k * k) * Math.PI ** 2 * fourier) / 4);
  }
  return Math.min(1, Math.max(0, 1 - (4 / Math.PI) * sum));
}

export const deadLegExchange = calculation({
  name: 'dead-leg-exchange',
  title: 'When does a cleaning agent reach the tip of a dead leg, and when is it gone again?',
  inputs: {
    ratio: number('L/d', 'length over bore, from the inner wall of the main', '1', { min: 0, max: 50 }),
    bore_mm: number('d', 'bore of the branch', 'mm', {
      default: 26,
      min: 1,
      max: 500,
      from: 'a usual size, common practice',
    }),
    flushed: number('e', 'bores from the mouth that the main flow flushes', '1', {
      default: 1,
      min: 0,
      max: 10,
      from: 'common practice: about one bore, more when the flow points into the branch; prove it with a test',
    }),
    diffusivity: number('D_c', 'diffusivity of the agent', 'm2/s', {
      default: 2e-9,
      min: 1e-10,
      max: 1e-3,
      from: 'NaOH in still water, common practice; enter a larger effective value where the column convects',
    }),
    share: number('c', 'share of the concentration of the main at the tip', '1', {
      default: 0.9,
      min: 0.01,
      max: 0.9999,
      from: 'common practice',
    }),
    contact_min: number('t_c', 'contact time of the cleaning step', 'min', {
      default: 20,
      min: 0,
      max: 1e6,
      from: 'common practice',
    }),
  },
  outputs: {
    time_h: {
      symbol: 't',
      label: 'time until the tip has that share, and until it has lost it in the rinse',
      unit: 'h',
    },
    reached: { symbol: 'c_t', label: 'share at the tip at the end of the contact time', unit: '1' },
    stagnant_mm: { symbol: 'L_s', label: 'stagnant length', unit: 'mm' },
    longest: {
      symbol: 'L/d max',
      label: 'longest branch over bore that reaches the share in the contact time',
      unit: '1',
    },
  },
  equation: [
    'L_s = max(0, L - e d)',
    'c(Fo) = 1 - (4/pi) sum (-1)^n/(2n+1) exp(-(2n+1)^2 pi^2 Fo/4), Fo = D_c t / L_s^2',
    't = Fo(c) L_s^2 / D_c; L/d max = e + sqrt(D_c t_c / Fo(c)) / d',
  ],
  validity:
    'Stagnant column behind a flushed mouth, diffusion only: the worst case. Density differences, pulses and opening valves exchange more; an upward pocket with air exchanges nothing.',
  source: 'J. Crank, The Mathematics of Diffusion (1975), 2.3; the flushed depth is common practice',
  example: {
    // Share 0.9: exp(-pi^2 Fo/4) = 0.1 pi/4 gives Fo = 1.0311; L_s = 26 mm: 1.0311 x 6.76e-4/2e-9 s = 96.81 h.
    inputs: { ratio: 2, bore_mm: 26, flushed: 1, share: 0.9 },
    expected: { time_h: 96.81, stagnant_mm: 26 },
    tolerance: 1e-4,
    source: 'closed form with the first term of the series',
  },
  caution: 'Cleaning agent that stays in a dead leg can reach the product: rinse and test the rinse water.',
  compute(x) {
    const d = x.bore_mm / 1000;
    const stagnant = Math.max(0, (x.ratio - x.flushed) * d);
    const fourier = bisect((fo) => tipConcentration(fo) - x.share, 0, 10);
    const contact = x.contact_min * 60;
    const reached = stagnant === 0 ? 1 : tipConcentration((x.diffusivity * contact) / stagnant ** 2);
    return {
      values: {
        time_h: (fourier * stagnant ** 2) / x.diffusivity / 3600,
        reached,
        stagnant_mm: stagnant * 1000,
        longest: x.flushed + Math.sqrt((x.diffusivity * contact) / fourier) / d,
      },
      warnings:
        reached < x.share
          ? [
              'The tip does not see the cleaning agent in the contact time: shorten the branch, or open and clean it by hand.',
            ]
          : [],
    };
  },
});
