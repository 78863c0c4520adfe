export { chlorideAllowance } from './chloride.ts';
export { galvanicPair } from './galvanic.ts';
export { pittingResistance } from './pren.ts';
export { sealCompatibility } from './seal-compatibility.ts';
