export { waterProperties } from './water-properties.ts';
