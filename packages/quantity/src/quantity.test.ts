import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  convert,
  convertDifference,
  formatQuantity,
  formatUnit,
  parseQuantity,
  readUnit,
  units,
} from './index.ts';

const read = (text: string, unit: string, locale?: string) =>
  parseQuantity(text, unit, locale === undefined ? {} : { locale });
const value = (text: string, unit: string, locale?: string) => {
  const parsed = read(text, unit, locale);
  return parsed.kind === 'quantity' ? parsed.value : parsed;
};

describe('parseQuantity', () => {
  it.each([
    ['3.75', 'mm', 3.75],
    ['3,75', 'mm', 3.75],
    ['2 in', 'mm', 50.8],
    ['2in', 'mm', 50.8],
    ['2"', 'mm', 50.8],
    ['1/8 in', 'mm', 3.175],
    ['1 1/2 in', 'mm', 38.1],
    ['1-1/2 in', 'mm', 38.1],
    ['1½ in', 'mm', 38.1],
    ['½ in', 'mm', 12.7],
    ['-1/2', '1', -0.5],
    ['2e-3 m', 'mm', 2],
    ['2×10^-3 m', 'mm', 2],
    ['1.234e3 mm', 'mm', 1234],
    ['32 uin', 'um', 0.8128],
    ['0.8 µm', 'um', 0.8],
    ['1 gal', 'L', 3.785411784],
    ['1 gpm', 'L/min', 3.785411784],
    ['2 gpm/ft', 'L/(min m)', (2 * 3.785411784) / 0.3048],
    ['14.5037737730 psi', 'bar', 1],
    ['1 W/(m2 K)', 'W/m2/K', 1],
    ['1 kWh', 'kJ', 3600],
    ['80C', 'degC', 80],
    ['80 deg C', 'degC', 80],
    ['80 celsius', 'degC', 80],
    ['3 L·min⁻¹', 'L/min', 3],
    ['176 °F', 'degC', 80],
    ['353.15 K', 'degC', 80],
    ['18 degF', 'K', 10],
    ['10 °C', 'K', 10],
    ['20 %', '1', 0.2],
    ['500 mg/L', 'kg/m3', 0.5],
    ['1 cP', 'mPa s', 1],
    ['50 mN/m', 'N/m', 0.05],
    ['1.41 mS/cm', 'uS/cm', 1410],
    ['1 234,5 mm', 'mm', 1234.5],
    ['1.234,5 mm', 'mm', 1234.5],
    ['1,234.5 mm', 'mm', 1234.5],
    ["1'234.5 mm", 'mm', 1234.5],
    ['1.234.567', '1', 1234567],
    ['0.125', 'mm', 0.125],
    ['0,125', 'mm', 0.125],
    ['1234,567', 'mm', 1234.567],
    ['20/h', '1/h', 20],
    ['.5 mm', 'mm', 0.5],
    ['−5 degC', 'degC', -5],
    ['40 mJ/cm²', 'J/m2', 400],
  ])('reads %s as %s', (text, unit, expected) => {
    expect(value(text, unit)).toBeCloseTo(expected, 9);
  });

  it('asks when a lone separator stands before three digits, and gives both readings', () => {
    for (const text of ['1,234 mm', '1.234 mm']) {
      const parsed = read(text, 'mm');
      expect(parsed.kind).toBe('ambiguous');
      if (parsed.kind !== 'ambiguous') continue;
      expect(parsed.readings.map((r) => r.value)).toEqual([1.234, 1234]);
      // What the message proposes is clear.
      expect(parsed.message).toMatch(/write 1\.2340 or 1234$/);
      expect(value('1.2340 mm', 'mm')).toBe(1.234);
      expect(value('1234 mm', 'mm')).toBe(1234);
    }
  });

  it('lets the locale settle its own decimal separator, but not its thousands separator', () => {
    expect(value('1,234', 'mm', 'de')).toBe(1.234);
    expect(value('1.234', 'mm', 'en')).toBe(1.234);
    expect(read('1.234', 'mm', 'de').kind).toBe('ambiguous');
    expect(read('1,234', 'mm', 'en').kind).toBe('ambiguous');
    expect(value('3.75', 'mm', 'de')).toBe(3.75);
  });

  it('says that a language tag is none instead of throwing', () => {
    expect(read('2 mm', 'mm', 'de_DE!')).toMatchObject({
      kind: 'error',
      message: '"de_DE!" is no language tag such as "de" or "en-GB"',
    });
    expect(value('2,5 mm', 'mm', 'de-CH')).toBe(2.5);
  });

  it('echoes what was understood', () => {
    expect(read('2 in', 'mm')).toMatchObject({ understood: '2 in = 50.8 mm' });
    expect(read('5', 'mm')).toMatchObject({ understood: '5 mm (no unit given, mm taken)' });
    expect(read('2,5', 'mm', 'de')).toMatchObject({ understood: '2,5 mm (no unit given, mm taken)' });
    expect(read('176 degF', 'degC')).toMatchObject({ understood: '176 °F = 80 °C' });
  });

  it.each([
    ['', 'mm', /nothing was entered: expected a length/],
    ['abc', 'mm', /does not start with a number: expected a length, such as 50.8 mm/],
    ['5 kg', 'mm', /"5 kg" is a mass: expected a length/],
    ['5 MM', 'mm', /upper and lower case differ, write mm or Mm|upper and lower case differ, write mm/],
    ['5 furlong', 'mm', /unit "furlong" is not known/],
    ['1/0 in', 'mm', /divides by zero/],
    ['1,23,456', 'mm', /mixes its separators/],
    ['1e999', 'mm', /too large/],
    ['-300 degC', 'degC', /below absolute zero/],
    ['2 %', 'deg', /is a pure number: expected an angle/],
    ['5 mg/L', 'ppm', /is a density or concentration: expected a pure number/],
    ['3 kg/m s', 'Pa s', /write brackets/],
    ['5 mm 3', 'mm', /in "5 mm 3"/],
    ['5-6 mm', 'mm', /in "5-6 mm"/],
    ['3 barg', 'bar', /marks gauge or absolute/],
    ['3 bar(a)', 'bar', /in plain bar/],
    ['30 psig', 'bar', /in plain psi/],
  ])('refuses "%s" with a sentence', (text, unit, message) => {
    const parsed = read(text, unit);
    expect(parsed.kind).toBe('error');
    if (parsed.kind === 'error') expect(parsed.message).toMatch(message);
  });

  it('never throws and never gives a number that is not finite, whatever is typed', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 30 }), fc.constantFrom('mm', 'degC', '1', 'L/min'), (text, unit) => {
        const parsed = read(text, unit);
        if (parsed.kind === 'quantity') expect(Number.isFinite(parsed.value)).toBe(true);
      }),
    );
  });

  it('reads back what formatQuantity wrote, in every language of the workbench', () => {
    const number = fc.double({ min: 1e-3, max: 1e8, noNaN: true }).map((x) => Number(x.toPrecision(6)));
    fc.assert(
      fc.property(
        number,
        fc.constantFrom('en', 'de', 'fr', 'nl', 'es', 'it'),
        fc.constantFrom('mm', 'degC', 'm3/h', 'W/(m2 K)', 'uS/cm', '%', 'deg'),
        (x, locale, unit) => {
          const parsed = read(formatQuantity(x, unit, { locale, digits: 6 }), unit, locale);
          const values =
            parsed.kind === 'quantity'
              ? [parsed.value]
              : parsed.kind === 'ambiguous'
                ? parsed.readings.map((r) => r.value)
                : [];
          expect(values.some((v) => Math.abs(v - x) <= 1e-9 * x)).toBe(true);
        },
      ),
    );
  });
});

describe('convert', () => {
  it('agrees with the exact definitions (NIST SP 811)', () => {
    expect(convert(1, 'in', 'mm')).toBeCloseTo(25.4, 12);
    expect(convert(1, 'psi', 'Pa')).toBeCloseTo(6894.757293168, 8);
    expect(convert(212, 'degF', 'degC')).toBeCloseTo(100, 10);
    expect(convert(80, 'degC', 'K')).toBeCloseTo(353.15, 10);
    expect(convertDifference(18, 'degF', 'K')).toBeCloseTo(10, 12);
    expect(convert(1, 'hp', 'W')).toBeCloseTo(745.69987158227, 8);
    expect(convert(1, 'BTU', 'kJ')).toBeCloseTo(1.05505585262, 12);
    expect(convert(180, 'deg', 'rad')).toBeCloseTo(Math.PI, 12);
  });

  it('goes there and back', () => {
    const pairs = units.flatMap((a) =>
      units.filter((b) => b.dimension.join() === a.dimension.join()).map((b) => [a, b]),
    );
    fc.assert(
      fc.property(
        fc.constantFrom(...pairs),
        fc.integer({ min: -1e9, max: 1e9 }).map((n) => n / 1000),
        ([a, b], x) => {
          const there = convert(x, a.symbol, b.symbol);
          const back = convert(there, b.symbol, a.symbol);
          // The zero of a scale costs digits: 1e-9 of 273 K.
          expect(Math.abs(back - x)).toBeLessThanOrEqual(
            1e-9 * (Math.abs(x) + (a.zero === 0 && b.zero === 0 ? 0 : 600)),
          );
        },
      ),
    );
  });

  it('refuses units of different dimension', () => {
    expect(() => convert(1, 'mm', 'kg')).toThrow('mm is a length, kg is a mass: no conversion');
  });
});

describe('units', () => {
  it('every row of the table reads, with all its spellings', () => {
    for (const row of units)
      for (const name of [row.symbol, ...row.also]) {
        const reading = readUnit(name);
        expect(reading.kind, name).toBe('unit');
        if (reading.kind === 'unit') expect(reading.unit.factor, name).toBe(row.factor);
      }
  });

  it('knows the minute from the milli-inch and refuses an unclear divisor', () => {
    expect(readUnit('min')).toMatchObject({ unit: { factor: 60 } });
    expect(readUnit('W/m2 K').kind).toBe('error');
    expect(readUnit('W/(m2 K').kind).toBe('error');
    expect(readUnit('m//s').kind).toBe('error');
  });
});

describe('formatQuantity', () => {
  it('writes by locale with significant digits', () => {
    expect(formatQuantity(1234.56, 'mm', { locale: 'de', digits: 6 })).toBe('1.234,56 mm');
    expect(formatQuantity(50.8, 'mm')).toBe('50.8 mm');
    expect(formatQuantity(2.7257, 'deg', { digits: 3 })).toBe('2.73°');
    expect(formatQuantity(0.5, '1')).toBe('0.5');
    expect(formatQuantity(1.2345e-6, 'm3/h', { digits: 3 })).toBe('1.23 × 10⁻⁶ m³/h');
    expect(formatQuantity(-0, 'mm')).toBe('0 mm');
  });

  it('shows units as people write them', () => {
    expect(['m3/h', 'uS/cm', 'degC', 'W/(m2 K)', 'cm2', 'mPa s', '1/h'].map(formatUnit)).toEqual([
      'm³/h',
      'µS/cm',
      '°C',
      'W/(m² K)',
      'cm²',
      'mPa s',
      '1/h',
    ]);
  });
});
