import { calculation, refuse } from '../calculation/calculation.ts';
import { choice, number } from '../calculation/inputs.ts';

interface Fit {
  /** Coefficients c0 to c4 of the density, v1 to v6 of the viscosity. */
  readonly density: readonly [number, number, number, number, number];
  readonly viscosity: readonly [number, number, number, number, number, number];
  /** Ranges of the data: degC from, degC to, largest mass fraction. */
  readonly densityRange: readonly [number, number, number];
  readonly viscosityRange: readonly [number, number, number];
}

/** M. Laliberte, J. Chem. Eng. Data 54 (2009) 1725, supporting information. */
const fits = {
  naoh: {
    density: [319.020509469838, 528.592358475315, -0.102197896602724, 0.000350420706415566, 765.970470238438],
    viscosity: [
      448.457566713375, 0.00871452408983102, -431.97212334697, 0.0160144202049452, 104.011738670148,
      4.64493684488816,
    ],
    densityRange: [4, 120, 0.5029],
    viscosityRange: [12.5, 70, 0.56],
  },
  hno3: {
    density: [
      0.272070788161643, -0.399605969016834, -2.33691977745914, 0.00662112384275969, -3089.01794099058,
    ],
    viscosity: [
      8.22640393251524e-5, -1.39718811419252, 0.11961884204502, -0.0199197916008091, -1.44481163970687,
      0.906940098315068,
    ],
    densityRange: [-10, 95, 0.7011],
    viscosityRange: [4, 25, 0.3086],
  },
  h3po4: {
    density: [1288.25499332174, -4126.67487464815, -4.64682626086799, 0.00466168016728373, -944.459685828192],
    viscosity: [
      5.40936381181384, 2.85113005922925, 4.18309800502585, 0.0160667795897231, 3.4709124824548,
      4.24236571675822,
    ],
    densityRange: [15.85, 81.4, 0.85],
    viscosityRange: [20, 25, 0.8],
  },
  sucrose: {
    density: [532.919899042424, 13692.5881480438, 12.6127261369233, 0.0266415899284128, 649.049186827162],
    viscosity: [
      16.2391830818804, 1.46930910938613, 3.28485782809427, 0.0102845759149181, 33.9389495762169,
      2.28172425556793,
    ],
    densityRange: [15, 55, 0.5066],
    viscosityRange: [15, 55, 0.5066],
  },
} as const satisfies Record<string, Fit>;

/** Density of water in that paper, kg/m3. */
function waterDensity(t: number): number {
  return (
    (((((-2.8054253e-10 * t + 1.0556302e-7) * t - 4.6170461e-5) * t - 0.0079870401) * t + 16.945176) * t +
      999.83952) /
    (1 + 0.01687985 * t)
  );
}

/** Viscosity of water in that paper, mPa s. */
function waterViscosity(t: number): number {
  return (t + 246) / ((0.05594 * t + 5.2842) * t + 137.37);
}

function beyond(t: number, w: number, [low, high, most]: readonly [number, number, number]): boolean {
  return t < low || t > high || w > most;
}

export const solution = calculation({
  name: 'solution-properties',
  title: 'Density and viscosity of cleaning and sugar solutions (Laliberte 2009)',
  inputs: {
    solute: choice(
      'dissolved matter',
      { naoh: 'sodium hydroxide', hno3: 'nitric acid', h3po4: 'phosphoric acid', sucrose: 'sucrose' },
      { default: 'naoh' },
    ),
    concentration_pct: number('w', 'concentration by mass', '%', { min: 0, max: 85 }),
    temperature_degC: number('T', 'temperature', 'degC', { default: 20, min: 0, max: 120 }),
  },
  outputs: {
    density: { symbol: 'rho', label: 'density', unit: 'kg/m3' },
    viscosity_mPas: { symbol: 'mu', label: 'dynamic viscosity', unit: 'mPa s' },
    perVolume_gL: { symbol: 'c', label: 'dissolved mass per volume', unit: 'g/L' },
  },
  equation: [
    '1/rho = (1 - w)/rho_w + w/rho_s, rho_s = (c0 w + c1) exp(1e-6 (T + c4)^2) / (w + c2 + c3 T)',
    'ln mu = (1 - w) ln mu_w + w ln mu_s, mu_s = exp((v1 w^v2 + v3) / (v4 T + 1)) / (v5 w^v6 + 1) mPa s',
    'c = w rho',
  ],
  validity:
    'One solute in water within the data of the fit: NaOH 12.5 to 70 degC, HNO3 4 to 25 degC and 30 %, H3PO4 20 to 25 degC and 80 %, sucrose 15 to 55 degC and 50 %. Beyond it refuses.',
  source:
    'M. Laliberte, J. Chem. Eng. Data 54 (2009) 1725 (coefficients as reproduced in an open-source property library)',
  example: {
    // Sucrose 20 % at 20 degC: 1080.97 kg/m3 and 1.945 mPa s in the ICUMSA tables (from memory).
    inputs: { solute: 'sucrose', concentration_pct: 20, temperature_degC: 20 },
    expected: { density: 1080.97, viscosity_mPas: 1.945 },
    tolerance: 0.02,
    source: 'ICUMSA tables, from memory; the fit itself is good to about 1 % in viscosity',
  },
  caution:
    'Lye and acid burn skin and eyes: wear what the safety data sheet asks for, add concentrate to water, never mix acid with chlorine products.',
  compute({ solute, concentration_pct, temperature_degC }) {
    const fit: Fit = fits[solute];
    const w = concentration_pct / 100;
    const t = temperature_degC;
    const range = [fit.densityRange, fit.viscosityRange].find((r) => beyond(t, w, r));
    if (range !== undefined)
      return refuse(
        `The published fit reaches from ${range[0]} to ${range[1]} degC and to ${(100 * range[2]).toFixed(0)} %: at ${t} degC and ${concentration_pct} % use measured values`,
      );
    const [c0, c1, c2, c3, c4] = fit.density;
    const [v1, v2, v3, v4, v5, v6] = fit.viscosity;
    const soluteDensity = ((c0 * w + c1) * Math.exp(1e-6 * (t + c4) ** 2)) / (w + c2 + c3 * t);
    const density = w === 0 ? waterDensity(t) : 1 / ((1 - w) / waterDensity(t) + w / soluteDensity);
    const soluteViscosity = w === 0 ? 1 : Math.exp((v1 * w ** v2 + v3) / (v4 * t + 1)) / (v5 * w ** v6 + 1);
    return {
      values: {
        density,
        viscosity_mPas: waterViscosity(t) ** (1 - w) * soluteViscosity ** w,
        perVolume_gL: w * density,
      },
    };
  },
});
