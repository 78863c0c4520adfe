import { plural } from './plural.ts';

/** Requirements, what became of each, and packs. */
export const requirements = {
  requirements: {
    title: 'Requirements',
    intro:
      'Every requirement of the chosen yardstick has a line. “Not shown” is no fault: it is still to be looked at, measured or proved by papers.',
    columns: {
      requirement: 'Requirement',
      status: 'Status',
      basis: 'How that came about',
      source: 'Source',
      findings: 'Findings',
    },
    filterStatus: 'Status',
    all: 'all',
    more: (n: number) => `${n} more`,
    follow: 'Follow',
    followNamed: (shown: string, text: string) => `${shown}: decision, cleaning and samples of ${text}`,
  },
  coverage: {
    title: 'Coverage',
    what: 'How it was settled',
    count: 'Requirements',
    rows: {
      computed: 'computed by a measure',
      looked: 'looked at on the round',
      notLookedAt: 'not looked at or not shown yet',
      noSuchElement: 'about something that this machine does not have',
    },
  },
  trace: {
    decision: 'Decision',
    undecided: 'not decided yet',
    controls: 'Control measures',
    control: (what: string, interval: string, owner: string) =>
      [what, interval, owner].filter(Boolean).join(', '),
    cleaning: 'Cleaned with',
    points: 'Sampled at',
    places: (n: number) => plural(n, 'place', 'places'),
    round: 'On the round',
    answered: 'answered',
    open: 'not looked at',
    nothing: 'Nothing leads on from here: no finding stands on it, and the round does not ask for it.',
    none: 'none',
  },
  packs: {
    title: 'Packs',
    intro:
      'A pack is a file with requirements, materials and profiles of your own (docs/formats.md). It adds to the catalogue of this machine and changes nothing that is built in.',
    none: 'No pack is added.',
    choose: 'Add a pack …',
    holds: (requirements: number, materials: number, profiles: number) =>
      `${plural(requirements, 'requirement', 'requirements')}, ${plural(materials, 'material', 'materials')}, ${plural(profiles, 'profile', 'profiles')}`,
    remove: 'Remove',
    removeNamed: (name: string) => `Remove the pack “${name}”`,
    refused: (file: string) => `${file} is not taken:`,
    notJson: (why: string) => `It is not JSON: ${why}.`,
    tooLarge: 'It is larger than 0.5 MB: a pack holds text only.',
    added: (name: string) => `The pack “${name}” is added.`,
    profile: 'Its profiles can be chosen in the brief.',
    toBrief: 'To the brief',
  },
};
