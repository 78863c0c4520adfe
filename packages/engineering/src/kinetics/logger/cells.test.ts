import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { numberIn, stampIn } from './cells.ts';

const numberOf = (text: string, comma = false) => numberIn(text, 0, text.length, comma);
const stampOf = (text: string) => stampIn(text, 0, text.length);

describe('numberIn', () => {
  it('gives the same bits as Number for every decimal number', () => {
    fc.assert(
      fc.property(
        fc.double({ noNaN: true, noDefaultInfinity: true }),
        fc.integer({ min: 0, max: 12 }),
        (x, places) => {
          for (const text of [String(x), x.toFixed(places), ` ${x} `])
            expect(Object.is(numberOf(text), Number(text)), text).toBe(true);
        },
      ),
      { seed: 41, numRuns: 500 },
    );
  });

  it.each([
    ['', false, Number.NaN],
    ['  ', false, Number.NaN],
    ['12,5', true, 12.5],
    ['12,5', false, Number.NaN],
    ['"12.5"', false, 12.5],
    ['-0.25', false, -0.25],
    ['+3', false, 3],
    ['1e3', false, 1000],
    ['1.2.3', false, Number.NaN],
    ['-', false, Number.NaN],
    ['n/a', false, Number.NaN],
    ['Infinity', false, Number.NaN],
  ])('%j with comma %s is %s', (text, comma, expected) => {
    expect(numberOf(text, comma)).toBe(expected);
  });
});

describe('stampIn', () => {
  it('agrees with Date on calendar times from 1970 to 2100', () => {
    fc.assert(
      fc.property(
        fc.date({
          min: new Date('1970-01-01T00:00:00Z'),
          max: new Date('2100-01-01T00:00:00Z'),
          noInvalidDate: true,
        }),
        (date) => {
          const text = date.toISOString();
          expect(Math.abs(stampOf(text) - date.getTime() / 1000)).toBeLessThan(1e-6);
          expect(stampOf(`${text.slice(0, 19)}+02:00`)).toBe(Math.floor(date.getTime() / 1000) - 7200);
          expect(stampOf(`${text.slice(0, 10)} ${text.slice(11, 16)}`)).toBe(
            Math.floor(date.getTime() / 60000) * 60,
          );
        },
      ),
      { seed: 42, numRuns: 300 },
    );
  });

  it.each([
    '2026-13-01T00:00:00Z',
    '2026-00-10T00:00:00Z',
    '2026-01-01T00:61:00Z',
    'today',
    '2026-01',
    '12:3',
    '',
  ])('%j is no time', (text) => {
    expect(stampOf(text)).toBeNaN();
  });

  it('reads clock times', () => {
    expect(stampOf('08:15')).toBe(29700);
    expect(stampOf('00:00:01,5')).toBe(1.5);
    expect(stampOf('125:00:00')).toBe(450000);
  });
});
