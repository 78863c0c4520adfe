/** Logger files: one cycle in many notations, gaps, and files that cannot be read. */
import { findCalculation } from '@coveline/engineering';
import { describe, expect, it } from 'vitest';

describe('logger files', () => {
  const run = (file: string, more: Record<string, string | number> = {}) => {
    const outcome = findCalculation('lethality-of-logger-file')!.evaluate({
      file,
      longestGap: 3600,
      ...more,
    });
    return outcome.kind === 'done' ? outcome : outcome.reason;
  };
  const done = (file: string, more: Record<string, string | number> = {}) => {
    const outcome = run(file, more);
    if (typeof outcome === 'string') throw new Error(outcome);
    return outcome;
  };
  // WP4 again, written in four ways.
  const temperatures = [60, 80, 95, 105, 112, 117, 120, 121.1, 121.1, 110, 80];

  it.each([
    ['minutes, comma', `time (min),T [degC]\n${temperatures.map((t, i) => `${2 * i},${t}`).join('\n')}\n`],
    [
      'seconds, semicolon, decimal comma, byte order mark, CRLF',
      `\ufefft/s;Fühler °C\r\n${temperatures.map((t, i) => `${120 * i};${String(t).replace('.', ',')}`).join('\r\n')}`,
    ],
    [
      'UTC stamps, tab, degF',
      `stamp\tT °F\n${temperatures.map((t, i) => `2026-03-29T00:${String(2 * i + 20).padStart(2, '0')}:00Z\t${t * 1.8 + 32}`).join('\n')}`,
    ],
    [
      'local stamps with offset over a change of the clock',
      `stamp,T degC\n${temperatures.map((t, i) => (i < 5 ? `2026-03-29T01:5${2 * i}:00+01:00,${t}` : `2026-03-29T03:${String(2 * i - 10).padStart(2, '0')}:00+02:00,${t}`)).join('\n')}`,
    ],
    [
      'clock times',
      `time,T degC\n${temperatures.map((t, i) => `08:${String(2 * i).padStart(2, '0')}:00,${t}`).join('\n')}`,
    ],
  ])('%s', (_, file) => {
    const { values } = done(file);
    // 1e-5: check value K-07 has six digits.
    expect(Math.abs(values.slowest_min / 6.23702 - 1)).toBeLessThan(1e-5);
    expect(Math.abs(values.trapezoid_min / 6.78612 - 1)).toBeLessThan(1e-5);
    expect(values.duration_min).toBe(20);
  });

  it('counts nothing in a gap and names the slowest sensor', () => {
    const { values, warnings, tables } = done(
      'time min,a degC,b degC\n0,121.1,121.1\n1,121.1,\n2,121.1,\n3,121.1,121.1\n4,121.1,121.1\n',
      { longestGap: 60 },
    );
    expect(values.slowest_min).toBeCloseTo(1, 12);
    expect(values.gap_min).toBeCloseTo(3, 12);
    expect(warnings[0]).toContain('"b degC"');
    expect(tables[0].rows.map((row) => row[1])).toEqual([4, 1]);
  });

  it.each([
    ['x', 'one line only'],
    ['time min,T\n0,1\n1,2', 'does not say whether it is in degC or degF'],
    ['time,T degC\n0,1\n1,2', 'does not say whether the time is in s, min or h'],
    ['time min,T degC\n0,1\n0,2', 'line 3: the time does not run forward'],
    ['time min,T degC\nyesterday,1\n1,2', 'line 2: the time "yesterday" cannot be read'],
    ['time,T degC\n2026-13-01T00:00:00Z,1\n2026-13-01T00:01:00Z,1', 'line 2: the time'],
    ['time min,T degC\n0,x\n1,y', 'has no value at all'],
  ])('refuses %j with a sentence', (file, message) => {
    expect(run(file)).toContain(message);
  });
});

describe('growth over a logger file', () => {
  const growth = (file: string) =>
    findCalculation('growth-of-logger-file')!.evaluate({ file, start: Math.log10(2) });

  it('WP6: 8 degC for 60 h at the warmest of two sensors, with a gap that is bridged', () => {
    const outcome = growth('time h,cold degC,warm degC\n0,4,8\n20,4,\n40,,8\n60,4,8\n');
    if (outcome.kind === 'refused') throw new Error(outcome.reason);
    // 90.04 cfu/mL, four digits.
    expect(Math.abs(10 ** outcome.values.end / 90.04 - 1)).toBeLessThan(1e-4);
    expect(outcome.warnings[0]).toContain('warm degC');
  });

  it('names a sensor without values', () => {
    expect(growth('time h,a degC,b degC\n0,4,\n20,4,\n')).toMatchObject({
      kind: 'refused',
      reason: expect.stringContaining('"b degC"') as string,
    });
  });
});
