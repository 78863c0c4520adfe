import { number } from '../calculation/inputs.ts';

export const confidence = number('c', 'confidence', '%', {
  default: 95,
  min: 50,
  max: 99.9999,
  from: 'common practice',
});
