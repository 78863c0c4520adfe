export { moistAirState } from './moist-air.ts';
export { solutionDensity } from './solution-density.ts';
export { solutionViscosity } from './solution-viscosity.ts';
export { saturatedSteam } from './steam-at-pressure.ts';
export { steamPressure } from './steam-at-temperature.ts';
export { waterProperties } from './water-properties.ts';
