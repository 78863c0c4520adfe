import { ALL, cheap, documented, free, inspected, memory, practice, requirementsOf, S } from '../row.ts';

export const waste = requirementsOf('waste', [
  {
    id: 'out-reject',
    text: 'Rejects fall into a closed bin that can be cleaned.',
    areas: S,
    hazards: 'BA',
    shown: [inspected],
    from: [practice],
    remedies: [cheap('Sloped chute.')],
    kept: ['No room.', 'Empty it each shift.'],
  },
  {
    id: 'waste-route',
    text: 'Waste leaves without crossing the way of product.',
    areas: ALL,
    hazards: 'BA',
    shown: [inspected, documented],
    from: [memory('EU-852', 'Annex II chapter VI'), memory('CXC-1', 'waste')],
    remedies: [free('Another way, another time.')],
    kept: ['One door only.', 'Closed bins, after production.'],
  },
]);
