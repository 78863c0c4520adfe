import { expect, test } from 'vitest';
import { wordList } from './word-list.ts';

test('words between commas, without the empty ones', () => {
  expect(wordList(' milk, oats,, ')).toEqual(['milk', 'oats']);
  expect(wordList('')).toEqual([]);
});
