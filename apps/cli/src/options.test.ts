import { describe, expect, test } from 'vitest';
import { UsageError } from './failure.ts';
import { parseMeasures, parsePositive, parseTilt, parseUp } from './options.ts';

describe('options', () => {
  test('tilt takes an axis and an angle', () => {
    expect(parseTilt('x:3')).toEqual({ axis: 'x', deg: 3 });
    expect(parseTilt('y:-1.5')).toEqual({ axis: 'y', deg: -1.5 });
  });

  test.each(['3', 'z:3', 'x:', 'x:three', 'x:1e9', ''])(
    'tilt "%s" is refused with what is expected',
    (text) => {
      expect(() => parseTilt(text)).toThrow(UsageError);
      expect(() => parseTilt(text)).toThrow(/such as x:3/);
    },
  );

  test('measures are a list of known names', () => {
    expect(parseMeasures('standingLiquid, hollows')).toEqual(['standingLiquid', 'hollows']);
    expect(() => parseMeasures('standingLiquid,puddles')).toThrow(/"puddles" is none of them/);
  });

  test('the up axis is one of six', () => {
    expect(parseUp('-y')).toBe('-y');
    expect(() => parseUp('up')).toThrow(UsageError);
  });

  test.each(['0', '-1', 'ten', 'NaN', 'Infinity', ' '])('"%s" is no positive number', (text) => {
    expect(() => parsePositive('--deviation', 'mm')(text)).toThrow(/above 0 in mm/);
  });
});
