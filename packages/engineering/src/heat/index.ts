export { comeUpTime } from './come-up-time.ts';
export { heatCircuit } from './heat-circuit.ts';
export { heatWater } from './heat-water.ts';
export { holdTube } from './hold-tube.ts';
export { insulatedPipeLoss } from './insulated-pipe.ts';
export { lineTemperature } from './line-temperature.ts';
export { barePipeLoss } from './pipe-heat-loss.ts';
