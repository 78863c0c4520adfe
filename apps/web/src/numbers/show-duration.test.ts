import { expect, test } from 'vitest';
import { showDuration } from './show-duration.ts';

test('minutes and seconds, hours only when there are any', () => {
  expect(showDuration(0)).toBe('0:00');
  expect(showDuration(67.9)).toBe('1:07');
  expect(showDuration(3723)).toBe('1:02:03');
  expect(showDuration(-1)).toBe('0:00');
});
