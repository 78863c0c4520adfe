import * as access from './access/index.ts';
import * as air from './air/index.ts';
import type { CalculationEntry } from './calculation/calculation.ts';
import * as flow from './flow/index.ts';
import * as heat from './heat/index.ts';
import * as kinetics from './kinetics/index.ts';
import * as materials from './materials/index.ts';
import * as resources from './resources/index.ts';
import * as statistics from './statistics/index.ts';
import * as surface from './surface/index.ts';
import * as texture from './texture/index.ts';
import * as water from './water/index.ts';

export interface Subject {
  readonly title: string;
  readonly calculations: readonly CalculationEntry[];
}

/** Every calculation by subject, in the order in which they are listed to people. */
export const subjects: readonly Subject[] = [
  { title: 'Water, steam and solutions', calculations: Object.values(water) },
  { title: 'Flow in closed circuits', calculations: Object.values(flow) },
  { title: 'Open surfaces', calculations: Object.values(surface) },
  { title: 'Heat', calculations: Object.values(heat) },
  { title: 'Kinetics', calculations: Object.values(kinetics) },
  { title: 'Air', calculations: Object.values(air) },
  { title: 'Statistics of proof', calculations: Object.values(statistics) },
  { title: 'Surface texture', calculations: Object.values(texture) },
  { title: 'Materials', calculations: Object.values(materials) },
  { title: 'Access and guards', calculations: Object.values(access) },
  { title: 'Resources', calculations: Object.values(resources) },
];

/** Every calculation, for lists and for generated commands and routes. */
export const calculations: readonly CalculationEntry[] = subjects.flatMap((subject) => subject.calculations);

export function findCalculation(name: string): CalculationEntry | undefined {
  return calculations.find((entry) => entry.name === name);
}
