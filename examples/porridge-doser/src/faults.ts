/**
 * What was planted in the machine on purpose, with numbers computed from its parameters: an answer sheet for a
 * review. It lists what was planted, not all that a review may rightly find. Parts are named as in the model.
 */
import { hollows, threads } from './faults/bodies.ts';
import type { PlantedFault } from './faults/fault.ts';
import { cornersAndGaps, levelFaces, liquid } from './faults/surfaces.ts';
import { aroundTheProduct, equipment } from './faults/surroundings.ts';
import { type Parameters, revisionA, revisionB } from './parameters.ts';

export type { ExpectedNumber, FaultKind, PlantedFault } from './faults/fault.ts';
export { intended } from './faults/intended.ts';

/** Every fault of one revision. */
export function plantedFaults(p: Parameters): PlantedFault[] {
  return [
    ...liquid(p),
    ...levelFaces(),
    ...cornersAndGaps(p),
    ...hollows(p),
    ...threads(p),
    ...aroundTheProduct(p),
    ...equipment(),
  ];
}

export interface ExpectedChange {
  readonly fault: string;
  readonly change: 'mended' | 'new' | 'stays';
}

/** From revision A to B. */
export function expectedChanges(): ExpectedChange[] {
  const before = plantedFaults(revisionA).map((f) => f.id);
  const after = plantedFaults(revisionB).map((f) => f.id);
  return [
    ...before.map((fault) => ({ fault, change: after.includes(fault) ? 'stays' : 'mended' }) as const),
    ...after.filter((fault) => !before.includes(fault)).map((fault) => ({ fault, change: 'new' }) as const),
  ];
}
