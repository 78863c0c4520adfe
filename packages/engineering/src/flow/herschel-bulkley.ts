import { calculation, refuse } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';

/** Mean speed of laminar Herschel-Bulkley flow in a pipe of radius `radius` at a wall shear; nil below the yield. */
function meanSpeed(wallShear: number, radius: number, yieldStress: number, k: number, n: number): number {
  if (wallShear <= yieldStress) return 0;
  const plug = yieldStress / wallShear;
  const s = (1 + n) / n;
  const rest = 1 - plug;
  // Integral of the velocity profile (R. P. Chhabra, J. F. Richardson, Non-Newtonian Flow, equation 3.14b).
  const sum = rest ** 2 / (s + 2) + (2 * plug * rest) / (s + 1) + plug ** 2 / s;
  return radius * (wallShear / k) ** (1 / n) * rest ** s * sum;
}

export const herschelBulkleyPipe = calculation({
  name: 'herschel-bulkley-pipe',
  title: 'Product with a yield stress in a pipe, laminar (Herschel-Bulkley)',
  inputs: {
    bore_mm: number('d', 'bore', 'mm', { min: 1, max: 1000 }),
    speed: number('v', 'mean speed', 'm/s', { min: 1e-5, max: 20 }),
    yieldStress: number('tau_0', 'yield stress', 'Pa', { min: 0, max: 1e4 }),
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
    plug: { symbol: 'phi', label: 'radius of the unsheared plug over pipe radius', unit: '1' },
    film_mm: { symbol: 'h_0', label: 'film that its yield stress holds on a vertical wall', unit: 'mm' },
    reynolds: { symbol: 'Re', label: 'Reynolds number 8 rho v^2 / tau_w', unit: '1' },
  },
  equation: [
    'tau = tau_0 + k g^n',
    'v = (d/2) (tau_w/k)^(1/n) (1-phi)^((n+1)/n) ((1-phi)^2/(1/n+3) + 2 phi (1-phi)/(1/n+2) + phi^2/(1/n+1)), phi = tau_0/tau_w; solved for tau_w',
    'dp = 4 tau_w L / d; h_0 = tau_0 / (rho g); Re = 8 rho v^2 / tau_w',
  ],
  validity: 'Laminar flow (Re below about 2100), no slip at the wall, steady product. Above it refuses.',
  source:
    'W. H. Herschel, R. Bulkley (1926); R. P. Chhabra, J. F. Richardson, Non-Newtonian Flow and Applied Rheology, 3.2',
  example: {
    // Without yield stress and with n = 1 Hagen-Poiseuille: tau_w = 8 mu v / d = 8 * 2 * 0.5 / 0.05 = 160 Pa.
    inputs: { bore_mm: 50, speed: 0.5, yieldStress: 0, consistency: 2, index: 1, length: 10 },
    expected: { wallShear: 160, loss_kPa: 128 },
    tolerance: 1e-9,
    source: 'closed form for a Newtonian liquid, Hagen-Poiseuille',
  },
  compute(x) {
    const radius = x.bore_mm / 2000;
    let low = x.yieldStress;
    let high = Math.max(1, 2 * x.yieldStress);
    while (meanSpeed(high, radius, x.yieldStress, x.consistency, x.index) < x.speed) high *= 2;
    for (let i = 0; i < 200; i++) {
      const middle = (low + high) / 2;
      if (meanSpeed(middle, radius, x.yieldStress, x.consistency, x.index) < x.speed) low = middle;
      else high = middle;
    }
    const reynolds = (8 * x.density * x.speed ** 2) / high;
    if (reynolds > 2100)
      return refuse(
        `The flow is not laminar (Re ${reynolds.toFixed(0)}): this formula holds below about 2100`,
      );
    return {
      values: {
        loss_kPa: (2 * high * x.length) / radius / 1000,
        wallShear: high,
        plug: x.yieldStress / high,
        film_mm: (1000 * x.yieldStress) / (x.density * 9.80665),
        reynolds,
      },
      warnings:
        x.yieldStress > 0
          ? [
              'A product with a yield stress does not drain by itself: the film stays until it is pushed or rinsed.',
            ]
          : [],
    };
  },
});
