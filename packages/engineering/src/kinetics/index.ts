export { growthInResidue } from './square-root-growth.ts';
