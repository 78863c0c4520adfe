import { describe, expect, it } from 'vitest';
import { runAgain } from './run-again.ts';

const typed = { calculation: 'dead-leg-ratio', locale: 'en' } as const;
const inputs = { rule: 'sixFromAxis', length: '275 mm', branch: '5 cm', main: '50 mm' };

describe('a calculation that was typed before', () => {
  it('gives its number again, and says when it is another one', () => {
    const again = (gave?: { value: number; unit: string } | null) => runAgain({ ...typed, inputs, gave });
    expect(again()).toMatchObject({ gives: { value: 6, unit: '1' }, refusal: null, changed: false });
    expect(again({ value: 6 * (1 + 1e-9), unit: '1' }).changed).toBe(false);
    expect(again({ value: 6.001, unit: '1' }).changed).toBe(true);
    expect(again({ value: 6, unit: 'mm' }).changed).toBe(true);
    expect(again(null).changed).toBe(true);
  });

  it('reads numbers the way that they were typed', () => {
    const german = { ...typed, locale: 'de', inputs: { ...inputs, length: '27,5 cm' } };
    expect(runAgain(german).gives).toEqual({ value: 6, unit: '1' });
  });

  it('tells in one sentence why there is no number', () => {
    const refusal = (change: Record<string, string>) =>
      runAgain({ ...typed, inputs: { ...inputs, ...change }, gave: { value: 6, unit: '1' } });
    expect(refusal({ length: '2 kg' })).toMatchObject({ gives: null, changed: true });
    expect(refusal({ length: '2 kg' }).refusal).toMatch(
      /^Length from .*: "2 kg" is a mass: expected a length/,
    );
    expect(refusal({ length: '-1 mm' }).refusal).toMatch(/^Length from the inner wall .* expected from 0 mm/);
    expect(refusal({ teapot: '1' }).refusal).toMatch(/^There is no input "teapot", expected: /);
    const { length: _, ...without } = inputs;
    expect(runAgain({ ...typed, inputs: without }).refusal).toBe(
      'Give the length from the inner wall of the main to the closure in mm or another unit of its kind.',
    );
    expect(runAgain({ ...typed, inputs, calculation: 'teapot' })).toMatchObject({
      entry: null,
      refusal: 'There is no calculation “teapot”; what was typed is kept.',
    });
  });
});
