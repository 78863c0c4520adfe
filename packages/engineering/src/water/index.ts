export { moistAirState } from './moist-air.ts';
export { solutionDensity } from './solution-density.ts';
export { solutionViscosity } from './solution-viscosity.ts';
export { saturatedSteam, steamPressure } from './steam-saturated.ts';
export { waterProperties } from './water-properties.ts';
