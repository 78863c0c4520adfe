import { atLeast, cheap, finds, inspected, memory, practice, requirementsOf, S, some } from '../row.ts';

export const doors = requirementsOf('door', [
  {
    id: 'door-hinge',
    text: 'Hinges come apart without tools or hide no sleeve; no piano hinge.',
    areas: S,
    hazards: 'B',
    shown: [finds('narrowGaps'), inspected],
    from: [memory('EHEDG-13', 'hinges'), practice],
    remedies: [cheap('Lift-off pin hinge with open clearance.')],
    kept: [
      'The hinge carries the interlock.',
      'Coded sensor away from the hinge; take the hinge apart every week and swab it.',
    ],
  },
  {
    id: 'door-seal',
    text: 'Door seals are one piece, sit in no deep channel and can be taken out.',
    areas: S,
    hazards: 'B',
    shown: [inspected, finds('narrowGaps')],
    from: [practice],
    remedies: [cheap('Seal pushed onto a plain edge, joint at the top.')],
    kept: ['The clean zone has to be tight.', 'Take the seal out at a set interval and clean behind it.'],
  },
  {
    id: 'door-open',
    text: 'Doors open far enough to see and reach every inner face.',
    areas: S,
    hazards: 'B',
    shown: [finds('clearances'), finds('handReach')],
    from: [practice],
    limits: [
      atLeast('openingAngle', 90, 'deg', { areas: S, from: practice, datum: '120 degrees preferred' }),
    ],
    remedies: [some('Lift-off or sliding door.')],
    kept: ['The aisle is narrow.', 'Panel that comes off instead.'],
  },
]);
