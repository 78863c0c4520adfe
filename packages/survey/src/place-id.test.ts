import { expect, test } from 'vitest';
import { placeNamer } from './place-id.ts';

test('the same parts at the same place have the same id, in any order of parts', () => {
  const a = placeNamer('pool')(['b', 'a'], [1, 2, 3]);
  const b = placeNamer('pool')(['a', 'b'], [1.2, 2.3, 2.6]);
  expect(a).toMatch(/^pool-[0-9a-f]{8}$/);
  expect(b).toBe(a);
});

test('other parts, another kind or another place give another id', () => {
  const at = [1, 2, 3] as const;
  const ids = [
    placeNamer('pool')(['a'], at),
    placeNamer('gap')(['a'], at),
    placeNamer('pool')(['b'], at),
    placeNamer('pool')(['a'], [11, 2, 3]),
  ];
  expect(new Set(ids).size).toBe(4);
});

test('namesakes are counted', () => {
  const name = placeNamer('corner');
  const first = name(['a'], [0, 0, 0]);
  expect(name(['a'], [-0.1, 0, 0.1])).toBe(`${first}-2`);
  expect(name(['a'], [0, 0, 0])).toBe(`${first}-3`);
});
