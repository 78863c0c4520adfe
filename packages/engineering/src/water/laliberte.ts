/**
 * Density and viscosity of one solute in water: M. Laliberte, J. Chem. Eng. Data 54 (2009) 1725. Mass fraction and
 * degC; kg/m3 and mPa s. The ranges of the data are the caller's to check.
 */
export interface Fit {
  /** Coefficients c0 to c4 of the density, v1 to v6 of the viscosity. */
  readonly density: readonly [number, number, number, number, number];
  readonly viscosity: readonly [number, number, number, number, number, number];
  /** Ranges of the data: degC from, degC to, largest mass fraction. */
  readonly densityRange: readonly [number, number, number];
  readonly viscosityRange: readonly [number, number, number];
}

/** Supporting information of that paper, as reproduced in an open-source property library. */
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
  nacl: {
    density: [
      -0.00324112223655149, 0.0636354335906616, 1.01371399467365, 0.0145951015210159, 3317.34854426537,
    ],
    viscosity: [
      16.221788633396, 1.32293086770011, 1.48485985010431, 0.00746912559657377, 30.7802007540575,
      2.05826852322558,
    ],
    densityRange: [0, 140, 0.2659],
    viscosityRange: [5, 154, 0.2645],
  },
} as const satisfies Record<string, Fit>;

export type Solute = keyof typeof fits;

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

export function fitOf(solute: Solute): Fit {
  return fits[solute];
}

/** kg/m3 */
export function solutionDensity(solute: Solute, w: number, t: number): number {
  const [c0, c1, c2, c3, c4] = fits[solute].density;
  const pure = ((c0 * w + c1) * Math.exp(1e-6 * (t + c4) ** 2)) / (w + c2 + c3 * t);
  return w === 0 ? waterDensity(t) : 1 / ((1 - w) / waterDensity(t) + w / pure);
}

/** mPa s */
export function solutionViscosity(solute: Solute, w: number, t: number): number {
  const [v1, v2, v3, v4, v5, v6] = fits[solute].viscosity;
  const pure = w === 0 ? 1 : Math.exp((v1 * w ** v2 + v3) / (v4 * t + 1)) / (v5 * w ** v6 + 1);
  return waterViscosity(t) ** (1 - w) * pure ** w;
}
