export {
  type ExpectedChange,
  type ExpectedNumber,
  expectedChanges,
  type FaultKind,
  intended,
  type PlantedFault,
  plantedFaults,
} from './faults.ts';
export { startKernel } from './kernel.ts';
export { machine } from './machine.ts';
export { type Parameters, revisionA, revisionB } from './parameters.ts';
export { type DrawnRevision, demoProject, stepFileName } from './project.ts';
export { writeStep } from './step.ts';
export { type Assembly, type Body, type Placed, type PlacedBody, placedBodies } from './tree.ts';
