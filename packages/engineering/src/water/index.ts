export { moistAirState } from './moist-air.ts';
export { solution } from './solution.ts';
export { saturatedSteam, steamPressure } from './steam-saturated.ts';
export { waterProperties } from './water-properties.ts';
