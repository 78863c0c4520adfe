import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { calculations, findCalculation } from '../registry.ts';
import { runFromText } from './from-text.ts';

const reason = (name: string, texts: Record<string, string>, locale?: string) => {
  const { outcome } = runFromText(findCalculation(name)!, texts, locale === undefined ? {} : { locale });
  return outcome.kind === 'refused' ? outcome.reason : 'done';
};

describe('runFromText', () => {
  it('reads units, echoes them, and fills in defaults', () => {
    const run = runFromText(findCalculation('pipe-flow')!, {
      bore: '2 in',
      flow: '44gpm',
      temperature: '80C',
    });
    expect(run.outcome.kind).toBe('done');
    expect(run.understood).toEqual([
      'bore: 2 in = 50.8 mm',
      'flow: 44 gpm = 9.99348710976 m³/h',
      'temperature: 80 °C',
    ]);
    expect(run.fields.bore_mm).toEqual({ kind: 'understood', text: '2 in = 50.8 mm' });
    if (run.outcome.kind === 'refused') return;
    const from = Object.fromEntries(run.outcome.working.inputs.map((i) => [i.symbol, i.from]));
    expect(from.d).toBe('given');
    expect(from.eps).toContain('default');
  });

  it('takes the full key as well as the short name', () => {
    expect(reason('pipe-flow', { bore_mm: '50', flow_m3h: '10' })).toBe('done');
  });

  it.each([
    ['0; 10; 20 min', '100; 121.1; 121.1 degC'],
    ['0 10 20', '100 121.1 121.1'],
    ['0 min; 600 s; 20 min', '212 degF; 249.98 degF; 249.98 degF'],
    ['0;10;20;', '100;121,1;121,1'],
  ])('reads the lists %j and %j', (times, temperatures) => {
    const { outcome } = runFromText(findCalculation('lethality-of-cycle')!, { times, temperatures });
    if (outcome.kind === 'refused') throw new Error(outcome.reason);
    // 10 z/(ln10 21.1) (1 - 10^-2.11) + 10.
    expect(outcome.values.lethality_min).toBeCloseTo(12.0423, 3);
  });

  it.each([
    ['pipe-flow', { bore: '50 mm' }, 'flow is missing: give the flow in m3/h'],
    ['pipe-flow', { bore: '2 kg', flow: '1' }, 'bore: "2 kg" is a mass: expected a length'],
    ['pipe-flow', { bore: '50', flow: '1', temperature: '-300 degC' }, 'below absolute zero'],
    ['pipe-flow', { bore: '50', flow: '1', temperature: '140 degC' }, 'water boils'],
    ['pipe-flow', { bore: '50', flow: '1', diameter: '3' }, 'there is no input "diameter", expected: bore,'],
    [
      'hydrogen-peroxide-liquid',
      { temperature: '20', concentration: '150 %', time: '1' },
      'concentration (concentration by mass) is 150 %, expected from 0.1 % to 50 %',
    ],
    ['friction-factor', { reynolds: '1e5', method: 'moody' }, 'expected one of: colebrook, haaland'],
    [
      'chart-shewhart',
      { values: '1; 2; x', target: '1', deviation: '1' },
      'values: "x" does not start with a number',
    ],
    [
      'most-probable-number',
      { volumes: '1;0.1', tubes: '3;3', positives: '4;0' },
      'positives must be whole numbers not above',
    ],
    ['puddle-depth', { contactAngle: '1,234' }, 'can mean'],
  ])('%s %j: %s', (name, texts, message) => {
    expect(reason(name, texts as Record<string, string>)).toContain(message);
  });

  it('never throws, whatever is typed into any calculation', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...calculations),
        fc.array(
          fc.oneof(
            fc.string({ maxLength: 12 }),
            fc.double().map(String),
            fc.integer({ min: -1000, max: 1000 }).map(String),
          ),
          { minLength: 20, maxLength: 20 },
        ),
        (entry, words) => {
          const texts = Object.fromEntries(
            Object.keys(entry.inputs).map((key, i) => [key, words[i % words.length]]),
          );
          const { outcome } = runFromText(entry, texts);
          if (outcome.kind === 'refused') expect(outcome.reason.length).toBeGreaterThan(5);
        },
      ),
      { seed: 99, numRuns: 400 },
    );
  });
});

describe('every calculation with random values in its range', () => {
  it.each(calculations.map((c) => [c.name, c] as const))(
    '%s gives finite numbers or a sentence (seed 17)',
    (_, entry) => {
      const random = (key: string) => {
        const spec = entry.inputs[key];
        if (spec.kind === 'choice') return fc.constantFrom(...Object.keys(spec.choices));
        if (spec.kind === 'text') return fc.constant(entry.example.inputs[key] as string);
        if (spec.kind === 'list') return fc.constant(entry.example.inputs[key] as readonly number[]);
        const example = (entry.example.inputs[key] as number | undefined) ?? spec.default ?? 1;
        const low = spec.min ?? Math.min(-10, -2 * Math.abs(example));
        const high = Math.min(spec.max ?? 1e6, Math.max(10, 20 * Math.abs(example)));
        const inside = fc.oneof(
          fc.constantFrom(low, Math.max(low, high)),
          fc.integer({ min: 0, max: 1000 }).map((n) => low + ((Math.max(low, high) - low) * n) / 1000),
        );
        // Large trial counts only cost time.
        if (key === 'trials') return fc.constant(spec.min ?? 100);
        return spec.whole ? inside.map(Math.round) : inside;
      };
      const inputs = fc.record(
        Object.fromEntries(Object.keys(entry.inputs).map((key) => [key, random(key)])),
      );
      fc.assert(
        fc.property(inputs, (values) => {
          const outcome = entry.evaluate(values as Record<string, number>);
          if (outcome.kind === 'refused') expect(outcome.reason.length).toBeGreaterThan(10);
          else
            for (const [key, value] of Object.entries(outcome.values))
              expect(Number.isFinite(value), key).toBe(true);
          if (outcome.kind === 'refused') expect(outcome.reason).not.toContain('is not a finite number');
        }),
        { seed: 17, numRuns: 40 },
      );
    },
  );
});
