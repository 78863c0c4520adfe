import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';

/** D. W. Dodge, A. B. Metzner, AIChE J. 5 (1959) 189: Fanning factor of turbulent power-law flow, by bisection. */
function dodgeMetzner(reynolds: number, n: number): number {
  const residual = (f: number) =>
    1 / Math.sqrt(f) - ((4 / n ** 0.75) * Math.log10(reynolds * f ** (1 - n / 2)) - 0.4 / n ** 1.2);
  let low = 1e-6;
  let high = 0.1;
  for (let i = 0; i < 80; i++) {
    const middle = Math.sqrt(low * high);
    if (residual(middle) > 0) low = middle;
    else high = middle;
  }
  return high;
}

export const powerLawPipe = calculation({
  name: 'power-law-pipe',
  title: 'Product with power-law viscosity in a pipe (Metzner and Reed 1955)',
  inputs: {
    bore_mm: number('d', 'bore', 'mm', { min: 1, max: 1000 }),
    speed: number('v', 'mean speed', 'm/s', { min: 1e-4, max: 20 }),
    consistency: number('k', 'consistency, Pa s^n', 'Pa s', { min: 1e-5, max: 1e4 }),
    index: number('n', 'flow index', '1', { min: 0.1, max: 2 }),
    density: number('rho', 'density', 'kg/m3', {
      default: 1050,
      min: 500,
      max: 2500,
      from: 'liquid food, common practice',
    }),
    length: number('L', 'length', 'm', { default: 1, min: 0, max: 1e4, from: 'one of its unit' }),
  },
  outputs: {
    loss_kPa: { symbol: 'dp', label: 'pressure loss', unit: 'kPa' },
    wallShear: { symbol: 'tau_w', label: 'wall shear', unit: 'Pa' },
    reynolds: { symbol: 'Re_MR', label: 'Reynolds number of Metzner and Reed', unit: '1' },
    critical: { symbol: 'Re_c', label: 'end of laminar flow', unit: '1' },
    fanning: { symbol: 'f_F', label: 'Fanning friction factor', unit: '1' },
    shearRate: { symbol: 'g_w', label: 'shear rate at the wall', unit: '1/s' },
  },
  equation: [
    'Re_MR = rho v^(2-n) d^n / (8^(n-1) k ((3n+1)/(4n))^n)',
    'Re_c = 6464 n / ((1+3n)^2 (1/(2+n))^((2+n)/(1+n)))',
    'laminar: f_F = 16/Re_MR; turbulent: 1/sqrt(f_F) = (4/n^0.75) log10(Re_MR f_F^(1-n/2)) - 0.4/n^1.2',
    'tau_w = f_F rho v^2 / 2, dp = 4 tau_w L / d, g_w = (8 v/d) (3n+1)/(4n)',
  ],
  validity:
    'Power-law fluid without yield stress or elasticity in round pipe; the turbulent formula was fitted for n from 0.36 to 1 and Re_MR up to 36 000.',
  source:
    'A. B. Metzner, J. C. Reed, AIChE J. 1 (1955) 434; N. W. Ryan, M. M. Johnson (1959) for Re_c; D. W. Dodge, A. B. Metzner (1959); constants of the last two from memory',
  example: {
    // Hagen-Poiseuille with n = 1: dp = 32 mu v L / d^2 = 32 * 0.1 * 0.5 * 10 / 0.0025 = 6400 Pa.
    inputs: { bore_mm: 50, speed: 0.5, consistency: 0.1, index: 1, density: 1000, length: 10 },
    expected: { loss_kPa: 6.4, reynolds: 250, wallShear: 8 },
    tolerance: 1e-9,
    source: 'closed form for a Newtonian liquid, Hagen-Poiseuille',
  },
  compute(x) {
    const d = x.bore_mm / 1000;
    const n = x.index;
    const reynolds =
      (x.density * x.speed ** (2 - n) * d ** n) /
      (8 ** (n - 1) * x.consistency * ((3 * n + 1) / (4 * n)) ** n);
    const critical = (6464 * n) / ((1 + 3 * n) ** 2 * (1 / (2 + n)) ** ((2 + n) / (1 + n)));
    const laminar = reynolds <= critical;
    const fanning = laminar ? 16 / reynolds : dodgeMetzner(reynolds, n);
    const wallShear = (fanning * x.density * x.speed ** 2) / 2;
    return {
      values: {
        loss_kPa: (4 * wallShear * x.length) / d / 1000,
        wallShear,
        reynolds,
        critical,
        fanning,
        shearRate: ((8 * x.speed) / d) * ((3 * n + 1) / (4 * n)),
      },
      warnings: [
        ...(!laminar && reynolds < 1.5 * critical
          ? ['Just above the laminar range: friction is uncertain.']
          : []),
        ...(!laminar && (n < 0.36 || n > 1 || reynolds > 36000)
          ? ['Turbulent formula used outside its data (n 0.36 to 1, Re up to 36 000).']
          : []),
      ],
    };
  },
});
