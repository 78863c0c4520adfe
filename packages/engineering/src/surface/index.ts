export { capillaryLength } from './capillary-length.ts';
export { dropRetention } from './drop-retention.ts';
export { dryingTime } from './drying-time.ts';
export { largestDrop } from './largest-drop.ts';
export { puddleDepth } from './puddle-depth.ts';
export { retainedVolume } from './retained-volume.ts';
