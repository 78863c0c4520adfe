/**
 * Programmes to begin with, by soil. Figures are those of teaching texts, handbooks and practice; the supplier of the
 * chemistry and a trial on the machine decide.
 */
import type { Citation } from '../types.ts';
import type { Action, Range, Soil, StepKind, Template, TemplateStep } from './types.ts';

const seen = (source: string, clause: string): Citation => ({ source, clause, standing: 'seen' });
const half = (source: string, clause: string): Citation => ({ source, clause, standing: 'partlySeen' });
const practice: Citation = { source: 'practice', clause: 'no source', standing: 'fromMemory' };

interface Values {
  readonly pct?: Range;
  readonly degC?: Range;
  readonly min?: Range;
}
const step = (
  kind: StepKind,
  medium: string,
  action: Action,
  how: string,
  { pct, degC, min }: Values = {},
): TemplateStep => ({
  kind,
  medium,
  action,
  ...(pct ? { concentration_pct: pct } : {}),
  ...(degC ? { temperature_degC: degC } : {}),
  ...(min ? { time_min: min } : {}),
  how,
});

const clear = step(
  'clear',
  'none',
  'scrape',
  'Empty the machine, lock it out, take up coarse soil and cover what must stay dry.',
  { min: [5, 10] },
);
const apart = step('dismantle', 'none', 'none', 'Take off what comes off and lay it in its tray.', {
  min: [5, 15],
});
const look = step(
  'inspect',
  'none',
  'none',
  'Look at every face with a lamp held flat; clean again what is not clean.',
  { min: [3, 5] },
);
const rinse = step(
  'rinse',
  'water',
  'spray',
  'Rinse from top to bottom until nothing of the cleaner is left.',
  { degC: [20, 50], min: [3, 5] },
);
const last = step('finalRinse', 'water', 'spray', 'Rinse with drinking water where the label asks for it.', {
  degC: [10, 30],
  min: [2, 3],
});
const drain = step('drain', 'none', 'none', 'Let it run off; open drains and tip what holds water.', {
  min: [5, 10],
});
const dry = step('dry', 'none', 'wipe', 'Dry it, or let it run dry before it stands.', { min: [10, 30] });
const together = step('reassemble', 'none', 'none', 'Put it together with clean hands and count the parts.', {
  min: [5, 15],
});
const peracid = (how = 'Wet every face and keep it wet for the contact time.'): TemplateStep =>
  step('disinfect', 'peracetic', 'spray', how, { pct: [0.01, 0.03], degC: [10, 30], min: [10, 20] });

const circuitRinse = (degC: Range, min: Range): TemplateStep =>
  step('preRinse', 'water', 'flow', 'Rinse the line until it runs clear.', { degC, min });
const between = step('rinse', 'water', 'flow', 'Rinse until conductivity is that of the water.', {
  degC: [20, 50],
  min: [3, 5],
});
const lastOfLine = step(
  'finalRinse',
  'water',
  'flow',
  'Rinse with drinking water until conductivity is that of the water.',
  { degC: [10, 30], min: [3, 5] },
);

const foamOf = (
  id: string,
  name: string,
  soil: Soil,
  pre: TemplateStep,
  main: TemplateStep,
  note: string,
  citation: Citation,
): Template => ({
  id,
  name,
  soil,
  ways: ['foamAndRinse', 'byHand'],
  steps: [clear, apart, pre, main, rinse, look, peracid(), last, drain, dry, together],
  note,
  citation,
});
const circuitOf = (
  id: string,
  name: string,
  soil: Soil,
  steps: readonly TemplateStep[],
  note: string,
  citation: Citation,
): Template => ({
  id,
  name,
  soil,
  ways: ['inPlace'],
  steps,
  note,
  citation,
});

const foam = (pct: Range, degC: Range, min: Range): TemplateStep =>
  step(
    'detergent',
    'alkalineFoam',
    'foam',
    'Foam from bottom to top; brush what is stuck; rinse before it dries.',
    { pct, degC, min },
  );

export const templates: readonly Template[] = [
  foamOf(
    'fat-foam',
    'Open surfaces with fat',
    'fat',
    step('preRinse', 'hotWater', 'spray', 'Rinse warm and with little pressure.', {
      degC: [50, 60],
      min: [3, 5],
    }),
    foam([0.5, 1.5], [50, 65], [10, 20]),
    'Warmer than the melting point of the fat by 5 K. Concentration as NaOH.',
    practice,
  ),
  foamOf(
    'protein-foam',
    'Open surfaces with cold protein',
    'proteinCold',
    step('preRinse', 'water', 'spray', 'Rinse lukewarm: protein sets above 40 °C.', {
      degC: [20, 40],
      min: [3, 5],
    }),
    step('detergent', 'chlorinatedAlkali', 'foam', 'Foam from bottom to top; rinse before it dries.', {
      pct: [0.2, 1],
      degC: [40, 60],
      min: [10, 20],
    }),
    'At most 200 ppm of chlorine; an acid step once a week, after a rinse.',
    practice,
  ),
  foamOf(
    'starch-foam',
    'Open surfaces with starch and milk',
    'starch',
    step('preRinse', 'water', 'spray', 'Rinse lukewarm: starch swells and sets above 40 °C.', {
      degC: [20, 40],
      min: [3, 5],
    }),
    foam([0.5, 2], [50, 65], [15, 20]),
    'Where foam alone does not lift the gel, soak removable parts in the washer.',
    practice,
  ),
  foamOf(
    'sugar-foam',
    'Open surfaces with sugar and caramel',
    'sugar',
    step('preRinse', 'hotWater', 'soak', 'Soak warm: sugar dissolves.', { degC: [50, 70], min: [10, 30] }),
    foam([0.5, 1], [50, 65], [10, 15]),
    'Alkali only where it is burnt.',
    practice,
  ),
  foamOf(
    'biofilm-foam',
    'Open surfaces with a biofilm',
    'biofilm',
    step('preRinse', 'water', 'spray', 'Rinse lukewarm.', { degC: [30, 40], min: [3, 5] }),
    step(
      'detergent',
      'naoh',
      'brush',
      'Scrub with alkali and a binder of calcium; take it off first, kill it then.',
      { pct: [1, 2], degC: [50, 70], min: [20, 60] },
    ),
    'Repeat until samples stay low; find out where the water comes from.',
    half('HHC', '27, removal before killing'),
  ),
  foamOf(
    'allergen-foam',
    'Change to a product without the allergen',
    'allergen',
    step('preRinse', 'water', 'spray', 'Rinse lukewarm after everything dry is taken up.', {
      degC: [20, 40],
      min: [3, 5],
    }),
    foam([0.5, 1.5], [50, 65], [15, 20]),
    'Before release a test for the protein, on faces and in the last rinse.',
    half('CXC-80', 'introduction'),
  ),
  {
    id: 'parts-washer',
    name: 'Removed parts in a bath or washer',
    soil: 'starch',
    ways: ['outOfPlace'],
    steps: [
      step('preRinse', 'water', 'spray', 'Rinse lukewarm over the tray.', { degC: [20, 40], min: [2, 3] }),
      step(
        'detergent',
        'mildAlkali',
        'soak',
        'Wash or soak; brush bores and grooves with a brush of their size.',
        { pct: [0.5, 1], degC: [50, 65], min: [10, 20] },
      ),
      step('rinse', 'water', 'spray', 'Rinse every bore.', { degC: [20, 50], min: [2, 3] }),
      look,
      step('disinfect', 'hotWater', 'soak', 'Hold in hot water.', { degC: [85, 90], min: [15, 20] }),
      step('dry', 'none', 'none', 'Dry on a rack, openings down, and keep covered.', { min: [30, 60] }),
    ],
    note: 'Each part has its place on the rack; count them.',
    citation: practice,
  },
  circuitOf(
    'milk-circuit',
    'Closed line with milk heated on it',
    'proteinHeated',
    [
      circuitRinse([20, 40], [5, 10]),
      step('detergent', 'naoh', 'flow', 'Circulate; time counts from the farthest point.', {
        pct: [0.5, 1.5],
        degC: [70, 85],
        min: [15, 30],
      }),
      between,
      step('acid', 'hno3', 'flow', 'Circulate against milk stone.', {
        pct: [0.5, 1.5],
        degC: [60, 65],
        min: [10, 20],
      }),
      between,
      step('disinfect', 'hotWater', 'flow', 'Circulate hot water; the coldest return counts.', {
        degC: [85, 95],
        min: [15, 20],
      }),
      drain,
    ],
    '0.5 % NaOH gave the shortest time in published tests on whey deposits.',
    half('HHC', '27 and 29'),
  ),
  circuitOf(
    'cold-milk-circuit',
    'Cold milk tank or line',
    'proteinCold',
    [
      circuitRinse([10, 30], [3, 4]),
      step('detergent', 'naoh', 'flow', 'Circulate or spray.', {
        pct: [0.35, 0.55],
        degC: [70, 75],
        min: [15, 20],
      }),
      between,
      step('disinfect', 'hotWater', 'flow', 'Circulate hot water; the coldest return counts.', {
        degC: [85, 90],
        min: [15, 20],
      }),
      drain,
    ],
    'An acid step each week.',
    seen('trade', 'a teaching text on dairies'),
  ),
  circuitOf(
    'starch-circuit',
    'Closed line with starch or porridge',
    'starch',
    [
      circuitRinse([20, 40], [5, 10]),
      step('detergent', 'naoh', 'flow', 'Circulate; time counts from the farthest point.', {
        pct: [0.5, 2],
        degC: [60, 80],
        min: [20, 40],
      }),
      between,
      step('disinfect', 'hotWater', 'flow', 'Circulate hot water; the coldest return counts.', {
        degC: [85, 95],
        min: [15, 20],
      }),
      drain,
    ],
    'Acid by the hardness of the water.',
    practice,
  ),
  circuitOf(
    'fruit-circuit',
    'Closed line with fruit pulp',
    'fruit',
    [
      circuitRinse([30, 50], [5, 10]),
      step('detergent', 'naoh', 'flow', 'Circulate.', { pct: [1, 2], degC: [70, 80], min: [20, 30] }),
      between,
      step('disinfect', 'peracetic', 'flow', 'Fill and circulate.', {
        pct: [0.01, 0.03],
        degC: [10, 30],
        min: [10, 20],
      }),
      lastOfLine,
      drain,
    ],
    'Acid where mineral builds up.',
    practice,
  ),
  circuitOf(
    'mineral-circuit',
    'Scale of milk, beer or water',
    'mineral',
    [
      circuitRinse([20, 50], [3, 5]),
      step('acid', 'hno3', 'flow', 'Circulate.', { pct: [0.5, 2], degC: [50, 65], min: [10, 30] }),
      between,
      step('detergent', 'naoh', 'flow', 'Circulate against what the scale held.', {
        pct: [0.5, 1],
        degC: [60, 75],
        min: [10, 20],
      }),
      between,
      drain,
    ],
    'Acid first, because mineral rules.',
    half('HHC', '27, nitric acid at 60 to 65 °C'),
  ),
  {
    id: 'powder-dry',
    name: 'Dry zone with powder',
    soil: 'powder',
    ways: ['dry'],
    steps: [
      clear,
      step('dryClean', 'none', 'vacuum', 'Vacuum and brush from top to bottom; no compressed air.', {
        min: [15, 30],
      }),
      look,
      step(
        'disinfect',
        'alcohol',
        'wipe',
        'Wipe with a moist cloth; keep flames, hot faces and drives away.',
        { pct: [60, 70], degC: [10, 30], min: [0.5, 2] },
      ),
      step('dry', 'none', 'none', 'Let it evaporate, with ventilation.', { min: [5, 10] }),
    ],
    note: 'Wet only by plan, and then dried right through.',
    citation: practice,
  },
  {
    id: 'chocolate-flush',
    name: 'Fat and dry, without water',
    soil: 'fatDry',
    ways: ['dry'],
    steps: [
      clear,
      step('dryClean', 'none', 'scrape', 'Scrape while it is warm.', { min: [10, 20] }),
      step('detergent', 'oil', 'flow', 'Flush with warm fat until it runs clear.', {
        degC: [45, 55],
        min: [10, 20],
      }),
      look,
    ],
    note: 'Water only with complete drying afterwards.',
    citation: practice,
  },
];

export const templateById: ReadonlyMap<string, Template> = new Map(templates.map((t) => [t.id, t]));
