/**
 * What metals, plastics and glass stand of the media that clean. Seals and jackets are in the engineering core. The
 * first row that covers material, medium, strength and heat counts; what no row covers is unknown, never fine.
 */
import type { Citation, MaterialFamily } from '../types.ts';
import type { MediumGroup } from './types.ts';

export type Verdict = 'suitable' | 'limited' | 'unsuitable';

export interface WithstandRow {
  /** Ids of materials, or a whole family. */
  readonly of: readonly string[] | MaterialFamily;
  readonly media: readonly MediumGroup[];
  readonly upTo_pct: number;
  readonly upTo_degC: number;
  readonly verdict: Verdict;
  readonly text: string;
  readonly citation: Citation;
}

const memory = (clause: string): Citation => ({ source: 'practice', clause, standing: 'fromMemory' });
const handbooks = memory('handbook consensus');

const row = (
  of: WithstandRow['of'],
  media: readonly MediumGroup[],
  verdict: Verdict,
  [upTo_pct, upTo_degC]: readonly [number, number],
  text: string,
): WithstandRow => ({ of, media, upTo_pct, upTo_degC, verdict, text, citation: handbooks });

const any = [100, 200] as const;
const steel = 'stainless steel' as const;
const lightMetals = ['aluminium', 'steel-zinc', 'tinplate'];
const copper = ['brass', 'bronze'];
const glassy = ['pc', 'pmma', 'petg'];
const tough = ['pp', 'pe-uhmw', 'peek', 'ptfe'];

export const withstand: readonly WithstandRow[] = [
  row(
    steel,
    ['water', 'hotWater', 'steam', 'alkali', 'enzyme', 'quat', 'alcohol', 'oil', 'peroxide'],
    'suitable',
    any,
    'Stainless steel stands it; chloride in the water counts on its own.',
  ),
  row(
    steel,
    ['acid'],
    'suitable',
    [2, 80],
    'Nitric, phosphoric and citric acid in cleaning strength; never hydrochloric acid.',
  ),
  row(steel, ['acid'], 'limited', any, 'Stronger or hotter than cleaning practice: ask the supplier.'),
  row(steel, ['peracid'], 'suitable', [0.5, 40], 'In disinfecting strength, rinsed off.'),
  row(
    steel,
    ['peracid'],
    'limited',
    any,
    'Stronger or hotter than practice: pitting where chloride is about.',
  ),
  row(
    steel,
    ['hypochlorite', 'chlorinatedAlkali'],
    'limited',
    [1, 60],
    'Short, alkaline, at most 200 ppm free chlorine and 40 °C for hypochlorite, then a rinse: it pits.',
  ),
  row(
    steel,
    ['hypochlorite', 'chlorinatedAlkali'],
    'unsuitable',
    any,
    'Strong or hot chlorine pits stainless steel.',
  ),
  row(
    lightMetals,
    ['alkali', 'chlorinatedAlkali', 'acid', 'hypochlorite', 'peracid'],
    'unsuitable',
    any,
    'Alkali dissolves it with hydrogen, acid and chlorine attack it.',
  ),
  row(
    lightMetals,
    ['water', 'alcohol', 'oil', 'enzyme', 'quat'],
    'limited',
    [100, 60],
    'Stands it where it dries; corrodes beside stainless steel.',
  ),
  row(
    copper,
    ['acid', 'peracid', 'hypochlorite', 'chlorinatedAlkali', 'peroxide'],
    'unsuitable',
    any,
    'Acid and oxidisers dissolve copper and its alloys.',
  ),
  row(
    copper,
    ['alkali', 'quat', 'water', 'hotWater', 'alcohol', 'oil', 'enzyme'],
    'limited',
    [5, 60],
    'Tarnishes; ammonia cracks brass.',
  ),
  row(
    ['titanium-2'],
    [
      'water',
      'hotWater',
      'steam',
      'alkali',
      'acid',
      'peracid',
      'hypochlorite',
      'chlorinatedAlkali',
      'quat',
      'alcohol',
      'enzyme',
      'oil',
    ],
    'suitable',
    [5, 140],
    'Stands all media of cleaning.',
  ),
  row(
    glassy,
    ['alcohol', 'quat'],
    'unsuitable',
    any,
    'Cracks under stress; PETG and polycarbonate less quickly than acrylic, yet no pane should meet it.',
  ),
  row(['pc'], ['alkali', 'chlorinatedAlkali'], 'unsuitable', any, 'Alkali decomposes polycarbonate.'),
  row(['pmma', 'petg'], ['alkali', 'chlorinatedAlkali'], 'limited', [0.5, 40], 'Weak and cool only.'),
  row(glassy, ['water', 'enzyme', 'acid', 'peracid'], 'suitable', [1, 50], 'Weak and cool.'),
  row(
    ['pom'],
    ['acid', 'peracid', 'hypochlorite', 'chlorinatedAlkali'],
    'unsuitable',
    any,
    'Acid and oxidisers attack POM.',
  ),
  row(
    ['pom'],
    ['water', 'hotWater', 'alkali', 'enzyme', 'alcohol', 'oil'],
    'suitable',
    [5, 70],
    'Stands alkali of cleaning strength; not hot water for long.',
  ),
  row(
    ['pa6'],
    ['acid', 'peracid', 'hypochlorite', 'chlorinatedAlkali', 'peroxide'],
    'unsuitable',
    any,
    'Acid and oxidisers attack polyamide, and it swells in water.',
  ),
  row(
    ['pa6'],
    ['water', 'alkali', 'enzyme', 'alcohol', 'oil', 'quat'],
    'limited',
    [5, 60],
    'It takes up water and swells.',
  ),
  row(
    tough,
    ['water', 'hotWater', 'alkali', 'acid', 'enzyme', 'quat', 'alcohol', 'peracid', 'oil'],
    'suitable',
    [5, 80],
    'Stands cleaning; creeps when it is hot.',
  ),
  row(tough, ['hypochlorite', 'chlorinatedAlkali', 'peroxide'], 'limited', [5, 60], 'Oxidisers age it.'),
  row(
    ['tpu-belt'],
    ['alkali', 'enzyme', 'quat', 'water'],
    'limited',
    [2, 50],
    'Hydrolyses when it is hot and alkaline for long.',
  ),
  row(
    ['tpu-belt'],
    ['acid', 'peracid', 'hypochlorite', 'chlorinatedAlkali', 'alcohol', 'hotWater', 'steam'],
    'unsuitable',
    any,
    'Acid, oxidisers and heat take the belt apart.',
  ),
  row(
    'glass',
    ['water', 'acid', 'enzyme', 'quat', 'alcohol', 'peracid', 'hypochlorite', 'chlorinatedAlkali', 'oil'],
    'suitable',
    [5, 80],
    'Glass stands it, but not a shock of heat.',
  ),
  row('glass', ['alkali', 'hotWater'], 'limited', [5, 80], 'Hot alkali etches it in time.'),
];
