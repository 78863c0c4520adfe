import { expect, it } from 'vitest';
import { subjects } from '../registry.ts';
import { calculationManual } from './document.ts';

it('docs/calculations.md is up to date', async () => {
  await expect(calculationManual(subjects)).toMatchFileSnapshot('../../../../docs/calculations.md');
});
