import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { builtIn, demandsInForce, readPack, withPacks } from './index.ts';

test('the example of docs/formats.md is a sound pack that does what the page says', () => {
  const formats = readFileSync(fileURLToPath(new URL('../../../docs/formats.md', import.meta.url)), 'utf8');
  const [, example] = /^## Packs[\s\S]*?```json\n([\s\S]*?)```/m.exec(formats)!;
  const read = readPack(JSON.parse(example), builtIn);
  if ('problems' in read) throw new Error(read.problems.join('\n'));
  const { catalogue, notes } = withPacks(builtIn, [read.pack]);
  expect(notes).toEqual([]);
  const demands = demandsInForce({ profile: 'house', careLevel: 'raised', on: '2026-11-25' }, catalogue);
  const own = demands.find((d) => d.id === 'house-radius');
  expect(own).toMatchObject({ kind: 'guidance', limits: [{ atLeast: 8, unit: 'mm' }] });
  expect(catalogue.materials.get('house-blue')?.maxTemperature_degC).toBe(130);
});
