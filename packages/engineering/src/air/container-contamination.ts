import { calculation } from '../calculation/calculation.ts';
import { number } from '../calculation/inputs.ts';
import { normalSource, uniformSource } from '../numeric/random.ts';
import { settling } from './settling.ts';

export const containerContamination = calculation({
  name: 'container-contamination',
  title: 'Microbes that fall into open containers, with uncertainty',
  inputs: {
    airborne_cfum3: number('C', 'airborne count at the opening', 'cfu/m3', { min: 0, max: 1e6 }),
    opening_cm2: number('A', 'area of the opening', 'cm2', {
      default: 50,
      min: 0,
      max: 1e6,
      from: 'an example: give your own',
    }),
    exposure: number('t', 'time open', 's', {
      default: 20,
      min: 0,
      max: 86400,
      from: 'an example: give your own',
    }),
    diameter_um: number('d', 'diameter of the microbe-carrying particles', 'um', {
      default: 14,
      min: 0.5,
      max: 100,
      from: 'mean of microbe-carrying particles after W. Whyte, from memory',
    }),
    downflow: number('u', 'speed of the downflow', 'm/s', {
      default: 0.45,
      min: 0,
      max: 5,
      from: 'middle of the 0.36 to 0.54 m/s of EU GMP Annex 1, from memory',
    }),
    rate_1h: number('r', 'containers an hour', '1/h', {
      default: 10000,
      min: 0,
      max: 1e7,
      from: 'an example: give your own',
    }),
    batch: number('n', 'containers of a batch', '1', {
      default: 80000,
      min: 1,
      max: 1e9,
      from: 'an example: give your own',
    }),
    airSpread: number('GSD_C', 'geometric standard deviation of the airborne count', '1', {
      default: 2,
      min: 1,
      max: 10,
      from: 'assumed',
    }),
    diameterSpread: number('GSD_d', 'geometric standard deviation of the diameter', '1', {
      default: 1.3,
      min: 1,
      max: 5,
      from: 'assumed',
    }),
    timeSpread: number('GSD_t', 'geometric standard deviation of the time open', '1', {
      default: 1.2,
      min: 1,
      max: 5,
      from: 'assumed',
    }),
    trials: number('N', 'trials', '1', {
      default: 10000,
      min: 100,
      max: 1e6,
      whole: true,
      from: 'common practice: the random error stays below some per cent',
    }),
    seed: number('seed', 'seed of the random numbers', '1', {
      default: 1,
      min: 0,
      max: 4294967295,
      whole: true,
      from: 'any one: the same seed gives the same numbers',
    }),
  },
  outputs: {
    perContainer: { symbol: 'm', label: 'microbes per container', unit: '1' },
    perHour_1h: { symbol: 'k', label: 'contaminated containers an hour', unit: '1/h' },
    perBatch: { symbol: 'k_b', label: 'contaminated containers of a batch', unit: '1' },
    low: { symbol: 'm_5', label: '5 % point of the microbes per container', unit: '1' },
    median: { symbol: 'm_50', label: 'median', unit: '1' },
    high: { symbol: 'm_95', label: '95 % point', unit: '1' },
    upperBound: { symbol: 'm_u', label: 'bound if everything in the downflow hit the opening', unit: '1' },
    speed_mms: { symbol: 'v', label: 'settling speed', unit: 'mm/s' },
  },
  equation: [
    'm = C v A t, v by Stokes with slip; m_u = C u A t',
    'k = r (1 - exp(-m)), k_b = n (1 - exp(-m))',
    'uncertainty: C, d and t lognormal with the given spread about the given value as median, N seeded trials',
  ],
  validity:
    'Particles settle into the opening and do not follow the air around it; the true rate lies between settling and the bound. Contact, splashes and people reach further.',
  source: 'W. Whyte, deposition of airborne contamination; Poisson; Monte Carlo after JCGM 101',
  example: {
    inputs: { airborne_cfum3: 5 },
    expected: { perContainer: 0.00297599, perHour_1h: 29.716 },
    tolerance: 0.005,
    source: 'worked problem WP7, steps 2 and 3; tolerance for the viscosity of air',
  },
  caution: 'An unsafe product can kill: this estimate supports a decision and does not prove safety.',
  compute(x) {
    const area = x.opening_cm2 * 1e-4;
    const speedOf = (diameter_um: number) => settling(diameter_um * 1e-6, 1000, 293.15, 101325).stokes;
    const speed = speedOf(x.diameter_um);
    const mean = x.airborne_cfum3 * speed * area * x.exposure;
    const normal = normalSource(uniformSource(x.seed));
    const spreads = [Math.log(x.airSpread), Math.log(x.diameterSpread), Math.log(x.timeSpread)];
    const found = new Float64Array(x.trials);
    for (let i = 0; i < x.trials; i++) {
      const count = x.airborne_cfum3 * Math.exp(spreads[0] * normal());
      const diameter = x.diameter_um * Math.exp(spreads[1] * normal());
      const time = x.exposure * Math.exp(spreads[2] * normal());
      found[i] = count * speedOf(diameter) * area * time;
    }
    found.sort();
    const at = (p: number) => found[Math.min(x.trials - 1, Math.floor(p * x.trials))];
    const share = -Math.expm1(-mean);
    return {
      values: {
        perContainer: mean,
        perHour_1h: x.rate_1h * share,
        perBatch: x.batch * share,
        low: at(0.05),
        median: at(0.5),
        high: at(0.95),
        upperBound: x.airborne_cfum3 * x.downflow * area * x.exposure,
        speed_mms: speed * 1000,
      },
    };
  },
});
