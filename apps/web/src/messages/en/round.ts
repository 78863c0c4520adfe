import { plural } from './plural.ts';

/** The round at the machine, and the samples. */
export const round = {
  round: {
    title: 'Round',
    intro:
      'What the model cannot show, from the floor to the filling head: stand beside the machine, look, measure and ask. What nobody has looked at stays open and is told so.',
    notReviewed: 'The round is drawn up when the model is surveyed.',
    caution: 'Lock out energy before hands go in. Stop the machine before anything is opened.',
    progress: (done: number, all: number) => `${done} of ${plural(all, 'item', 'items')} looked at`,
    who: 'Your name',
    whoHint: 'Stands with every answer.',
    needsName: 'Say who you are first: an answer carries a name.',
    only: 'Show',
    onlyOpen: 'only what is open',
    onlyAll: 'everything',
    stopFacts: (height: string | null, done: number, all: number) =>
      height === null ? `${done} of ${all}` : `from ${height} up · ${done} of ${all}`,
    parts: (n: number) => plural(n, 'part', 'parts'),
    why: 'Why',
    good: 'As it should be',
    how: 'How to find out',
    states: {
      open: 'not looked at',
      asItShould: 'as it should be',
      notAsItShould: 'not as it should be',
      notHere: 'not on this machine',
    },
    state: 'What was found',
    words: 'In words',
    reading: (what: string, unit: string) => `${what[0]!.toUpperCase()}${what.slice(1)}, in ${unit}`,
    badReading: (why: string) => `Kept as it stands, but it cannot be read: ${why}`,
    signed: (by: string, on: string) => `${by}, ${on}`,
    allDone: 'Everything here was looked at.',
  },
  proof: {
    title: 'Proof',
    intro:
      'Samples are taken where cleaning is hardest, not where it is easiest. Points come from the findings; limits say on whose authority they stand.',
    notReviewed: 'The plan is drawn up when the model is surveyed.',
    none: 'No finding in the food or splash area has a place to sample.',
    validation: 'How many',
    validationText: (n: string) =>
      `${n} samples without a positive show, with 95 % confidence, that fewer than a tenth are positive.`,
    stages: 'When',
    points: 'Points',
    columns: { point: 'Point', test: 'Test', when: 'When', limit: 'Limit', every: 'Routine' },
    when: {
      afterCleaning: 'after cleaning',
      afterDisinfection: 'after disinfection',
      beforeStart: 'before the start',
    },
    neutraliser: 'with neutraliser',
    notDetected: 'not detected',
    actAbove: (value: string) => `act above ${value}`,
    alertAbove: (value: string) => `look above ${value}`,
    everyDays: (n: number) => (n === 1 ? 'each day' : `every ${n} days`),
    show: 'Show the finding',
    showNamed: (name: string) => `Show the finding: ${name}`,
    results: 'Results are not kept here yet.',
  },
  hazards: {
    title: 'What the products bring',
    proposed: (level: string) => `The products ask for: ${level}.`,
    less: 'The brief asks for less than that. Keep it only with a reason that is written down.',
    authority: 'A process authority decides.',
    assumed: 'Not known, and taken at its worst',
    none: 'No product is named, so no hazard is known.',
    kinds: {
      biological: 'germs',
      chemical: 'chemicals',
      physical: 'foreign bodies',
      allergen: 'allergen',
      operatorSafety: 'people at the machine',
    },
  },
};
