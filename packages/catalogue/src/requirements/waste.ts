import { ALL, cheap, documented, free, inspected, memory, practice, requirementsOf, S } from '../row.ts';

export const waste = requirementsOf('waste', [
  {
    id: 'out-reject',
    text: 'Rejects fall into a closed bin that can be cleaned.',
    areas: S,
    hazards: 'BA',
    shown: [inspected],
    from: [practice],
    remedies: [cheap('Fit a sloped chute to a closed bin.')],
    kept: ['There is no room for a bin.', 'Empty it each shift and wash the place.'],
  },
  {
    id: 'waste-route',
    text: 'Waste leaves without crossing the way of product.',
    areas: ALL,
    hazards: 'BA',
    shown: [inspected, documented],
    from: [memory('EU-852', 'Annex II chapter VI'), memory('CXC-1', 'waste')],
    remedies: [free('Choose another way or another time.')],
    kept: ['There is only one door.', 'Closed bins, after production.'],
  },
]);
