/** The words of the file for the values that data carries. */
import type { Decision } from '@coveline/project';
import type { Finding, RequirementStatus } from '@coveline/review';
import type { Sign } from '../picture/palette.ts';

export const areaWords: Readonly<Record<Finding['areaClass'], string>> = {
  food: 'food area',
  splash: 'splash area',
  nonFood: 'non-food area',
};

export const kindWords: Readonly<Record<Finding['demand']['kind'], string>> = {
  law: 'law',
  standard: 'standard',
  guidance: 'guidance',
  commonPractice: 'common practice',
};

export const statusWords: Readonly<Record<RequirementStatus['status'], string>> = {
  met: 'met',
  notMet: 'not met',
  notShown: 'not shown',
  noSuchElement: 'no such element',
};

export const standingWords = {
  seen: 'source seen',
  partlySeen: 'source partly seen',
  fromMemory: 'from memory',
} as const;

export const costWords = { none: 'no cost', low: 'low cost', some: 'some cost', high: 'high cost' } as const;

export const becauseWords: Readonly<Record<Extract<Decision, { kind: 'concession' }>['because'], string>> = {
  function: 'the function needs it',
  safety: 'the safety of people needs it',
  cost: 'the change would cost too much',
  availability: 'nothing better can be had',
};

export const cleaningWords = {
  inPlace: 'cleaned in place',
  outOfPlace: 'cleaned out of place',
  foamAndRinse: 'foam and rinse',
  byHand: 'by hand',
  dry: 'dry',
} as const;

export const careWords = {
  basic: 'basic: the food is cooked or stable afterwards',
  raised: 'raised: chilled ready food',
  high: 'high: vulnerable consumers or sterile filling',
} as const;

export const rankWords = {
  1: 'Rank 1, gravest',
  2: 'Rank 2',
  3: 'Rank 3',
  4: 'Rank 4',
} as const;

export const measureWords: Readonly<Record<NonNullable<Finding['measure']>, string>> = {
  standingLiquid: 'standing liquid',
  flatFaces: 'level faces',
  insideCorners: 'inside corners',
  narrowGaps: 'narrow gaps and joints',
  hollows: 'hollows and blind channels',
  fasteners: 'fasteners and threads',
  handReach: 'reach of the hand',
  toolReach: 'reach of the tool',
  jetReach: 'reach of the jets',
  openSky: 'first air',
  overhead: 'above open product',
  clearances: 'clearances',
};

export function signOf(measure: Finding['measure']): Sign {
  switch (measure) {
    case 'standingLiquid':
      return 'liquid';
    case 'flatFaces':
      return 'flat';
    case 'narrowGaps':
      return 'gap';
    case 'insideCorners':
      return 'corner';
    case 'hollows':
      return 'hollow';
    case 'fasteners':
      return 'fastener';
    case 'handReach':
    case 'toolReach':
    case 'jetReach':
    case 'clearances':
      return 'reach';
    case 'openSky':
    case 'overhead':
      return 'air';
    case null:
      return 'asked';
  }
}

/** "1 finding", "2 findings". */
export function counted(n: number, noun: string): string {
  return `${n} ${noun}${n === 1 ? '' : 's'}`;
}

/** Shown in every file, whatever the machine. */
export const cautions: readonly string[] = [
  'This file supports a decision. It is not a certificate, and it does not replace the judgement of a competent person who has seen the machine.',
  'A model shows what was drawn, not what was built: welds, surface finish, seals and wear have to be inspected on the machine.',
  'Cleaning chemicals burn skin and eyes, and some give off dangerous gas when they are mixed. The safety data sheet and the label decide on dilution, protective equipment and contact time.',
  'Hot water and steam scald; pressure and jets injure and drive water into bearings and electrics. Isolate energy and let the machine come to rest before it is opened or cleaned.',
  'Guards, interlocks and emergency stops are there for the safety of people. A hygienic improvement must not weaken them; a qualified person decides on any change to them.',
  'Allergens and pathogens can harm people in amounts that nobody sees. A calculated growth or residue is an estimate within the validity that stands beside it; whether a product is safe is for the food business and its competent authority to decide.',
  'Demands are given in our own words. The source itself decides, in the edition that is in force where the machine is used; limits marked “from memory” have not been checked against it.',
];
