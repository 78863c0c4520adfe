/**
 * Seals and cable jackets against cleaning media: common practice from handbooks, from memory, to be overruled by the
 * supplier's data for the compound. A row holds up to its concentration (percent by mass, ppm written as percent) and
 * temperature; the first row of a pair that covers the case counts, and what no row covers is unknown.
 */
export type Verdict = 'suitable' | 'limited' | 'unsuitable';

export interface CompatibilityRow {
  readonly upTo_pct: number;
  readonly upTo_degC: number;
  readonly verdict: Verdict;
}

export const media = {
  naoh: 'sodium hydroxide',
  hno3: 'nitric acid',
  h3po4: 'phosphoric acid',
  peracetic: 'peracetic acid',
  peroxide: 'hydrogen peroxide',
  hypochlorite: 'hypochlorite (as free chlorine)',
  quat: 'quaternary ammonium compound',
  alcohol: 'alcohol',
  steam: 'saturated steam',
  hotWater: 'hot water',
  fat: 'fat and oil',
} as const;
export type Medium = keyof typeof media;

export const elastomers = {
  epdm: 'EPDM, peroxide cured',
  fkm: 'FKM',
  vmq: 'silicone (VMQ)',
  nbr: 'NBR',
  hnbr: 'HNBR',
  ptfe: 'PTFE',
  ffkm: 'FFKM',
  pvcJacket: 'PVC jacket',
  purJacket: 'PUR jacket (ether)',
  tpeJacket: 'TPE jacket',
  siliconeJacket: 'silicone jacket',
  fepJacket: 'FEP jacket',
} as const;
export type Elastomer = keyof typeof elastomers;

const row = (verdict: Verdict, upTo_pct: number, upTo_degC: number): CompatibilityRow => ({
  verdict,
  upTo_pct,
  upTo_degC,
});
const yes = (pct: number, degC: number) => row('suitable', pct, degC);
const some = (pct: number, degC: number) => row('limited', pct, degC);
const no = row('unsuitable', 100, 200);

type Table = Readonly<Partial<Record<Medium, readonly CompatibilityRow[]>>>;

/** Media that a material takes in every concentration of cleaning practice up to a temperature. */
const all = (degC: number): Table => ({
  naoh: [yes(5, degC)],
  hno3: [yes(3, degC)],
  h3po4: [yes(5, degC)],
  peracetic: [yes(0.5, Math.min(degC, 60))],
  peroxide: [yes(3, Math.min(degC, 60))],
  hypochlorite: [yes(0.1, Math.min(degC, 60))],
  quat: [yes(1, degC)],
  alcohol: [yes(100, 40)],
  hotWater: [yes(100, degC)],
  fat: [yes(100, degC)],
});

export const compatibility: Readonly<Record<Elastomer, Table>> = {
  epdm: {
    naoh: [yes(5, 80)],
    hno3: [some(2, 65), row('unsuitable', 100, 200)],
    h3po4: [yes(5, 80)],
    peracetic: [yes(0.3, 40)],
    peroxide: [yes(3, 40), some(35, 80)],
    hypochlorite: [some(0.05, 40)],
    quat: [yes(1, 60)],
    alcohol: [yes(100, 40)],
    steam: [yes(100, 140), some(100, 175)],
    hotWater: [yes(100, 150)],
    fat: [no],
  },
  fkm: {
    naoh: [row('limited', 2, 40), no],
    hno3: [yes(3, 80)],
    h3po4: [yes(5, 80)],
    peracetic: [some(0.5, 40)],
    peroxide: [some(35, 60)],
    hypochlorite: [yes(0.1, 40)],
    quat: [some(1, 60)],
    alcohol: [yes(100, 40)],
    steam: [row('limited', 100, 120), no],
    hotWater: [some(100, 80)],
    fat: [yes(100, 150)],
  },
  vmq: {
    naoh: [row('limited', 1, 40), no],
    hno3: [no],
    h3po4: [some(5, 60)],
    peracetic: [some(0.5, 40)],
    peroxide: [yes(3, 40)],
    hypochlorite: [some(0.05, 40)],
    quat: [some(1, 60)],
    alcohol: [some(100, 40)],
    steam: [some(100, 120), no],
    hotWater: [yes(100, 100)],
    fat: [some(100, 100)],
  },
  nbr: {
    naoh: [some(2, 60)],
    hno3: [no],
    h3po4: [some(5, 60)],
    peracetic: [no],
    peroxide: [no],
    hypochlorite: [no],
    quat: [some(1, 60)],
    alcohol: [some(100, 40)],
    steam: [no],
    hotWater: [yes(100, 80)],
    fat: [yes(100, 100)],
  },
  hnbr: {
    naoh: [yes(5, 80)],
    hno3: [some(1, 50)],
    h3po4: [some(5, 60)],
    peracetic: [some(0.3, 40)],
    peroxide: [some(3, 40)],
    hypochlorite: [some(0.05, 40)],
    quat: [yes(1, 60)],
    alcohol: [some(100, 40)],
    steam: [row('limited', 100, 120), no],
    hotWater: [yes(100, 100)],
    fat: [yes(100, 150)],
  },
  ptfe: { ...all(100), steam: [yes(100, 150)] },
  ffkm: { ...all(100), steam: [some(100, 150)] },
  pvcJacket: {
    naoh: [yes(2, 30), row('limited', 2, 60), no],
    hno3: [some(2, 40)],
    h3po4: [some(5, 40)],
    peracetic: [some(0.3, 40)],
    peroxide: [some(3, 40)],
    hypochlorite: [some(0.05, 40)],
    alcohol: [no],
    fat: [no],
  },
  purJacket: {
    naoh: [some(1, 30), no],
    hno3: [no],
    h3po4: [no],
    peracetic: [no],
    peroxide: [no],
    hypochlorite: [no],
    alcohol: [some(100, 30)],
    hotWater: [yes(100, 60), some(100, 80)],
    fat: [yes(100, 60)],
  },
  tpeJacket: {
    naoh: [yes(2, 80)],
    hno3: [yes(2, 60)],
    h3po4: [yes(5, 60)],
    peracetic: [some(0.3, 40)],
    peroxide: [some(3, 40)],
    hypochlorite: [some(0.05, 40)],
    quat: [yes(1, 60)],
    alcohol: [yes(100, 30)],
    hotWater: [yes(100, 90)],
    fat: [some(100, 60)],
  },
  siliconeJacket: {
    naoh: [row('limited', 1, 30), no],
    hno3: [no],
    h3po4: [no],
    steam: [some(100, 120)],
    hotWater: [yes(100, 100)],
  },
  fepJacket: all(90),
};
