/** Where sources disagree on radius, dead leg, slope and clearance, a profile takes one side. */
import type { Profile } from './types.ts';

export const profiles: readonly Profile[] = [
  {
    id: 'eu',
    name: 'Europe, usual figures',
    summary:
      'Machine law and food law of the European Union with the figures most often agreed: radius 3 mm in the food area, slope 3 degrees, 150 mm above the floor, dead legs up to one bore from the inner wall of the main.',
    jurisdiction: 'eu',
  },
  {
    id: 'eu-preferred',
    name: 'Europe, preferred figures',
    summary:
      'The same law with the stricter figures that guidance prefers: radius 6 mm in the food area and 3 mm in the splash area, 200 mm above the floor. For high care.',
    jurisdiction: 'eu',
  },
  {
    id: 'us',
    name: 'United States practice',
    summary:
      'US rules with sanitary-standard practice: radius 1/4 in in the food area, 6 in above the floor, dead legs up to two bores from the inner wall of the main, slope 1/4 in per foot.',
    jurisdiction: 'us',
  },
  {
    id: 'bioprocess',
    name: 'Europe, bioprocessing figures',
    summary:
      'European law with the figures of bioprocessing for closed lines: dead legs up to two bores from the inner wall, lines falling 2 percent. A yardstick for sterile filling, not a food law.',
    jurisdiction: 'eu',
  },
];
