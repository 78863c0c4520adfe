import { cheap, finds, half, inspected, memory, requirementsOf, SN, some } from '../row.ts';

export const castors = requirementsOf('castor', [
  {
    id: 'castor-wash',
    text: 'Castors can be washed: closed fork, sealed bearing, solid axle, brake without pockets.',
    areas: SN,
    hazards: 'B',
    shown: [inspected, finds('hollows')],
    from: [half('EHEDG-43', '8, feet and castors'), memory('EHEDG-13', 'castors')],
    remedies: [some('Castors made for washing.'), cheap('Fixed feet where nothing has to roll.')],
    kept: ['The machine has to be moved.', 'Put the castors on the wash list and sample them.'],
  },
]);
