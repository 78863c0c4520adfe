import { documented, finds, inspected, practice, requirementsOf, S, some } from '../row.ts';

export const windows = requirementsOf('window', [
  {
    id: 'window-pane',
    text: 'Panes are tough plastic or laminated glass, held from outside and without a wet gap.',
    areas: S,
    hazards: 'PB',
    shown: [inspected, finds('narrowGaps')],
    from: [practice],
    remedies: [some('Pane bonded flush, or a clear door without a frame.')],
    kept: ['Cleaning scratches the pane.', 'Change it at a set interval.'],
  },
  {
    id: 'window-agent',
    text: 'The plastic of a pane stands alcohol, alkali and heat of the cleaning without stress cracks.',
    areas: S,
    hazards: 'PC',
    shown: [documented, inspected],
    from: [practice],
    remedies: [some('Change plastic or agent.')],
    kept: ['Only one agent is allowed.', 'Look for haze and cracks at each clean.'],
  },
]);
