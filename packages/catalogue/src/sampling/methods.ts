import type { Citation } from '../types.ts';

const seen = (source: string, clause: string): Citation => ({ source, clause, standing: 'seen' });
const half = (source: string, clause: string): Citation => ({ source, clause, standing: 'partlySeen' });
const memory = (source: string, clause: string): Citation => ({ source, clause, standing: 'fromMemory' });
const practice = memory('practice', 'no source');

/** How a face, a rinse or the air is examined. */
export interface SamplingMethod {
  readonly id: string;
  readonly name: string;
  /** Sampled face, cm²; absent where no face is sampled. */
  readonly area_cm2?: readonly [low: number, high: number];
  readonly use: string;
  /** What spoils the result, one sentence. */
  readonly trap: string;
  /** A disinfectant on the face has to be neutralised. */
  readonly neutraliser: boolean;
  readonly citation: Citation;
}

export const samplingMethods: readonly SamplingMethod[] = [
  {
    id: 'visual',
    name: 'Look and feel',
    use: 'First and always, with a lamp held flat and a white cloth.',
    trap: 'A film is not seen on a wet face or in bad light: 300 lux at least.',
    neutraliser: false,
    citation: practice,
  },
  {
    id: 'atp',
    name: 'ATP swab',
    area_cm2: [100, 100],
    use: 'Cleanness within a minute, before disinfection.',
    trap: 'Readings of one instrument mean nothing on another; disinfectant quenches, and fat is hardly seen.',
    neutraliser: false,
    citation: seen('HHC', '36'),
  },
  {
    id: 'protein',
    name: 'Protein swab',
    area_cm2: [100, 100],
    use: 'Whether cleaning took the protein away.',
    trap: 'Heated protein reacts less; know detection limit and recovery.',
    neutraliser: false,
    citation: half('CXC-80', 'introduction'),
  },
  {
    id: 'allergen',
    name: 'Allergen swab',
    area_cm2: [100, 100],
    use: 'After a change from a product with the allergen.',
    trap: 'Heat and fermentation hide the protein from the test.',
    neutraliser: false,
    citation: half('CXC-80', 'introduction'),
  },
  {
    id: 'contact',
    name: 'Contact plate',
    area_cm2: [20, 25],
    use: 'Flat, smooth and dry faces.',
    trap: 'On wet or curved faces it smears; above about 200 colonies it cannot be counted.',
    neutraliser: true,
    citation: half('practice', 'ISO 18593, headings seen, numbers from memory'),
  },
  {
    id: 'swab',
    name: 'Stick swab',
    area_cm2: [1, 100],
    use: 'Corners, gaps, threads, bores.',
    trap: 'Dry steel gives back 10 to 60 %; use a frame and two directions.',
    neutraliser: true,
    citation: half('practice', 'ISO 18593, headings seen, numbers from memory'),
  },
  {
    id: 'sponge',
    name: 'Sponge or cloth',
    area_cm2: [100, 3000],
    use: 'Large faces, search for Listeria.',
    trap: 'Pooled samples lose the place.',
    neutraliser: true,
    citation: half('practice', 'ISO 18593, headings seen; EU reference laboratory guide, existence seen'),
  },
  {
    id: 'rinse',
    name: 'Rinse water',
    use: 'Closed lines as a whole.',
    trap: 'Pockets and dead legs give nothing to it.',
    neutraliser: true,
    citation: practice,
  },
  {
    id: 'dye',
    name: 'Fluorescent dye',
    use: 'Where a rinse reaches, before and after, under ultraviolet light.',
    trap: 'It shows wetting and rinsing, not cleaning of the real soil.',
    neutraliser: false,
    citation: practice,
  },
  {
    id: 'settle',
    name: 'Settle plate',
    use: 'Clean air beside open packs, 90 mm for up to 4 h.',
    trap: 'It sees large particles more than small ones, and dries.',
    neutraliser: false,
    citation: half('GMP-1', 'monitoring, as a yardstick'),
  },
];

export type Measured =
  | 'aerobic'
  | 'enterobacteriaceae'
  | 'listeria'
  | 'atp'
  | 'protein'
  | 'allergen'
  | 'visual'
  | 'rinseCount'
  | 'settle';

/** A limit with its standing: who said it, and whether anybody is bound by it. */
export interface SamplingLimit {
  readonly id: string;
  readonly of: Measured;
  readonly methods: readonly string[];
  /** From here somebody looks; absent where there is none. */
  readonly alertAbove?: number;
  /** Above it somebody acts. Zero: not detected. */
  readonly actAbove: number;
  readonly unit: string;
  /** In words: law, repealed law, research, practice. */
  readonly standing: string;
  readonly citation: Citation;
}

export const samplingLimits: readonly SamplingLimit[] = [
  {
    id: 'aerobic-research',
    of: 'aerobic',
    methods: ['contact', 'swab'],
    alertAbove: 1,
    actAbove: 2.5,
    unit: '1/cm2',
    standing: 'research recommendation of 1999 and 2000; alert at 1 after a national agency of 1998',
    citation: seen('HHC', 'table 36.8'),
  },
  {
    id: 'aerobic-repealed',
    of: 'aerobic',
    methods: ['contact', 'swab'],
    actAbove: 10,
    unit: '1/cm2',
    standing: 'EU meat decision of 2001, repealed in 2006, still used',
    citation: seen('HHC', 'table 36.8'),
  },
  {
    id: 'enterobacteriaceae-repealed',
    of: 'enterobacteriaceae',
    methods: ['contact', 'swab'],
    actAbove: 1,
    unit: '1/cm2',
    standing: 'EU meat decision of 2001, repealed in 2006, still used',
    citation: seen('HHC', 'table 36.8'),
  },
  {
    id: 'listeria-face',
    of: 'listeria',
    methods: ['sponge', 'swab'],
    actAbove: 0,
    unit: '1',
    standing: 'guidance: not detected; every find starts the search for its source',
    citation: half('CXG-61', 'introduction'),
  },
  {
    id: 'atp-own',
    of: 'atp',
    methods: ['atp'],
    actAbove: 0,
    unit: '1',
    standing:
      'own limit: mean and spread of faces proven clean, on the instrument in use; never copied from another',
    citation: seen('HHC', '36'),
  },
  {
    id: 'protein-practice',
    of: 'protein',
    methods: ['protein'],
    actAbove: 5,
    unit: 'ug',
    standing: 'practice: below detection, often 1 to 5 µg on 100 cm²',
    citation: practice,
  },
  {
    id: 'allergen-detected',
    of: 'allergen',
    methods: ['allergen'],
    actAbove: 0,
    unit: '1',
    standing: 'guidance: below the detection of the method, or by reference dose',
    citation: memory('CXC-80', 'expert doses of 2021 and 2022'),
  },
  {
    id: 'visual-clean',
    of: 'visual',
    methods: ['visual', 'dye'],
    actAbove: 0,
    unit: '1',
    standing: 'practice: clean to see, to touch and to smell',
    citation: practice,
  },
  {
    id: 'rinse-supply',
    of: 'rinseCount',
    methods: ['rinse'],
    actAbove: 0,
    unit: '1',
    standing: 'practice: no coliforms in 100 mL, count and conductivity as the supply',
    citation: practice,
  },
  {
    id: 'settle-yardstick',
    of: 'settle',
    methods: ['settle'],
    actAbove: 1,
    unit: '1',
    standing: 'yardstick of sterile medicines: less than one colony in 4 h',
    citation: half('GMP-1', 'grade A'),
  },
];

export const samplingMethodById: ReadonlyMap<string, SamplingMethod> = new Map(
  samplingMethods.map((m) => [m.id, m]),
);
export const samplingLimitById: ReadonlyMap<string, SamplingLimit> = new Map(
  samplingLimits.map((l) => [l.id, l]),
);
