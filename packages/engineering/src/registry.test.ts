import { readUnit, unitOf } from '@coveline/quantity';
import { describe, expect, it } from 'vitest';
import { inputName } from './calculation/inputs.ts';
import * as everything from './index.ts';
import { calculations } from './registry.ts';

/** "mm" for mm, "m3h" for m3/h, "pct" for %; for a coherent SI unit it may be left out. */
function suffixesOf(unit: string): readonly string[] {
  const { factor, zero } = unitOf(unit);
  if (unit === 'log10') return ['log10'];
  const written = unit === '%' ? 'pct' : unit.replace(/[^A-Za-z0-9]/g, '');
  return factor === 1 && zero === 0 ? ['', written] : [written];
}

describe('the registry', () => {
  it('holds every calculation that the package offers, and the package offers nothing else to compute with', () => {
    const tools = [
      'againstBefore',
      'calculations',
      'findCalculation',
      'inputName',
      'refusalSentence',
      'resultText',
      'runAgain',
      'runFromText',
      'subjects',
    ];
    for (const [name, value] of Object.entries(everything))
      if (!tools.includes(name)) expect(calculations, name).toContain(value);
    for (const entry of calculations) expect(Object.values(everything), entry.name).toContain(entry);
  });

  it('has no name twice', () => {
    const names = calculations.map((c) => c.name);
    expect(new Set(names).size).toBe(names.length);
  });

  it.each(calculations.map((c) => [c.name, c] as const))('%s says everything a reader needs', (name, c) => {
    expect(name).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
    expect(c.title.length).toBeGreaterThan(10);
    expect(c.equation.length).toBeGreaterThan(0);
    for (const line of c.equation) expect(line.length).toBeGreaterThan(3);
    expect(c.validity.length, 'validity').toBeGreaterThan(20);
    expect(c.source.length, 'source').toBeGreaterThan(8);
    expect(c.example.source.length, 'source of the example').toBeGreaterThan(5);
    expect(Object.keys(c.example.expected).length).toBeGreaterThan(0);
    expect(Object.keys(c.outputs).length).toBeGreaterThan(0);
    expect(new Set(Object.keys(c.inputs).map(inputName)).size).toBe(Object.keys(c.inputs).length);
    for (const [key, spec] of [...Object.entries(c.inputs), ...Object.entries(c.outputs)]) {
      expect(key, 'lower camel case, unit behind "_"').toMatch(/^[a-z][A-Za-z0-9]*(_[A-Za-z0-9]+)?$/);
      expect(spec.label.length, `label of ${key}`).toBeGreaterThan(2);
      if (!('unit' in spec)) continue;
      expect(readUnit(spec.unit).kind, `unit of ${key}`).toBe('unit');
      const suffix = key.split('_')[1] ?? '';
      expect(suffixesOf(spec.unit), `unit in the name of ${key}`).toContain(suffix);
    }
    for (const [key, spec] of Object.entries(c.inputs))
      if (spec.kind === 'number')
        expect(
          spec.min !== undefined || spec.max !== undefined || spec.usual !== undefined,
          `range of ${key}`,
        ).toBe(true);
    for (const [key, spec] of Object.entries(c.inputs))
      if (spec.kind === 'number' && spec.default !== undefined)
        expect(spec.from?.length ?? 0, `where the default of ${key} comes from`).toBeGreaterThan(5);
  });

  it.each(calculations.map((c) => [c.name, c] as const))('%s gives what its example says', (_, c) => {
    const outcome = c.evaluate(c.example.inputs);
    expect(outcome.kind === 'refused' ? outcome.reason : 'done').toBe('done');
    if (outcome.kind === 'refused') return;
    for (const [key, expected] of Object.entries(c.example.expected)) {
      const error = Math.abs(outcome.values[key] - expected) / Math.max(Math.abs(expected), 1e-300);
      expect(error, `${key} ${outcome.values[key]}, expected ${expected}`).toBeLessThanOrEqual(
        c.example.tolerance,
      );
    }
    expect(outcome.working.result.value).toBe(
      Object.values(outcome.values)[0] ?? outcome.working.result.value,
    );
    for (const [key, output] of Object.entries(c.outputs))
      if (output.words !== undefined)
        expect(output.words[outcome.values[key]], `word of ${key}`).toBeDefined();
    expect(outcome.working.inputs.every((i) => i.from !== undefined)).toBe(true);
    expect(JSON.parse(JSON.stringify(outcome.working))).toEqual(outcome.working);
  });

  it.each(calculations.map((c) => [c.name, c] as const))('%s refuses what lies outside its range', (_, c) => {
    for (const [key, spec] of Object.entries(c.inputs)) {
      if (spec.kind !== 'number') continue;
      const bad = [
        Number.NaN,
        ...(spec.min === undefined ? [] : [spec.min - 1]),
        ...(spec.max === undefined ? [] : [spec.max + 1]),
      ];
      for (const value of bad) {
        const outcome = c.evaluate({ ...c.example.inputs, [key]: value });
        expect(outcome.kind, `${key} = ${value}`).toBe('refused');
        if (outcome.kind === 'refused') expect(outcome.reason).toContain(inputName(key));
      }
    }
    expect(c.evaluate({ ...c.example.inputs, nothingOfTheKind: 1 })).toMatchObject({ kind: 'refused' });
  });
});
