import { calculations, findCalculation, runFromText } from '@coveline/engineering';
import { describe, expect, it, test } from 'vitest';
import { exampleTexts } from './example-texts.ts';
import { readLink, writeLink } from './link.ts';

describe('the worked example of every calculation', () => {
  it.each(calculations.map((c) => [c.name, c] as const))('%s, typed and sent as a link', (_, entry) => {
    for (const locale of ['en', 'de']) {
      const texts = exampleTexts(entry, locale);
      const back = readLink(writeLink(texts, entry).query, entry);
      expect(back).toEqual(texts);
      const { outcome } = runFromText(entry, back, { locale });
      expect(outcome).toMatchObject({ kind: 'done' });
      const direct = entry.evaluate(entry.example.inputs);
      if (outcome.kind === 'refused' || direct.kind === 'refused') throw new Error('refused');
      for (const [key, value] of Object.entries(direct.values))
        expect(outcome.values[key], key).toBeCloseTo(value, 6 - Math.log10(Math.abs(value) + 1e-9));
    }
  });
});

test('a link takes short names and full keys, and leaves out what is too long for it', () => {
  const entry = findCalculation('lethality-of-logger-file')!;
  expect(readLink('?z=10+K&reference_degC=121&teapot=1', entry)).toEqual({
    z: '10 K',
    reference_degC: '121',
  });
  const long = 'time min,a degC\n'.repeat(1000);
  expect(writeLink({ file: long, z: '10 K' }, entry)).toEqual({ query: '?z=10+K', leftOut: ['file'] });
});
