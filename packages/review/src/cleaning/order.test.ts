import { orderRules, templates } from '@coveline/catalogue';
import { cleaningStep, type SurfaceGroup } from '@coveline/project';
import { describe, expect, test } from 'vitest';
import { stepsFor } from './groups.ts';
import { breachesOf } from './order.ts';

type Given = Record<string, unknown> & { kind: string; medium: string };
const step = (given: Given) => cleaningStep.parse({ action: 'spray', ...given });
const group = (steps: readonly Given[], more: Partial<SurfaceGroup> = {}): SurfaceGroup => ({
  id: 'open',
  name: 'Open surfaces',
  way: 'foamAndRinse',
  soil: 'starch',
  parts: ['plate'],
  steps: steps.map(step),
  reasons: [],
  ...more,
});
const on = { stainless: true, allergens: true };
const broken = (steps: readonly Given[], more?: Partial<SurfaceGroup>) =>
  breachesOf(group(steps, more), on).map((b) => b.rule.id);

const clear = { kind: 'clear', medium: 'none' };
const pre = { kind: 'preRinse', medium: 'water', temperature_degC: 35 };
const alkali = {
  kind: 'detergent',
  medium: 'alkalineFoam',
  action: 'foam',
  time_min: 15,
  concentration_pct: 1,
  temperature_degC: 55,
};
const rinse = { kind: 'rinse', medium: 'water' };
const look = { kind: 'inspect', medium: 'none' };
const peracid = {
  kind: 'disinfect',
  medium: 'peracetic',
  concentration_pct: 0.02,
  temperature_degC: 20,
  time_min: 15,
};
const last = { kind: 'finalRinse', medium: 'water' };
const drain = { kind: 'drain', medium: 'none' };
const sound = [clear, pre, alkali, rinse, look, peracid, last, drain];

test('a sound programme breaks no rule', () => {
  expect(broken(sound)).toEqual([]);
});

test.each(templates.map((t) => [t.id, t] as const))('the template %s breaks no rule', (_, t) => {
  const way = t.ways[0];
  const steps = t.steps.map((s) =>
    step({
      kind: s.kind,
      medium: s.medium,
      action: s.action,
      concentration_pct: s.concentration_pct?.[0],
      temperature_degC: s.temperature_degC?.[0],
      time_min: s.time_min?.[0],
    }),
  );
  expect(breachesOf({ ...group([]), way, soil: t.soil, steps }, on)).toEqual([]);
});

const replaced = (i: number, more: Record<string, unknown>) =>
  sound.map((s, at) => (at === i ? ({ ...s, ...more } as Given) : s));

/** Every rule is broken once, and only by what breaks it. */
const faults: Readonly<Record<string, readonly [steps: readonly Given[], more?: Partial<SurfaceGroup>]>> = {
  'chlorine-gas': [
    [
      clear,
      pre,
      { kind: 'detergent', medium: 'chlorinatedAlkali', concentration_pct: 1 },
      { kind: 'acid', medium: 'hno3', concentration_pct: 1 },
      last,
      drain,
    ],
  ],
  'peracid-organic': [[clear, pre, look, peracid, last, drain]],
  'alcohol-hot': [
    [
      clear,
      alkali,
      rinse,
      look,
      {
        kind: 'disinfect',
        medium: 'alcohol',
        action: 'wipe',
        concentration_pct: 70,
        temperature_degC: 45,
        time_min: 2,
      },
      drain,
    ],
  ],
  secured: [sound.slice(1)],
  'gross-soil-first': [[pre, clear, alkali, rinse, look, peracid, last, drain]],
  'allergen-dry-first': [sound.slice(1), { soil: 'allergen' }],
  'cool-pre-rinse': [replaced(1, { temperature_degC: 41 })],
  'warm-pre-rinse': [replaced(1, { temperature_degC: 44 }), { soil: 'fat' }],
  'clean-before-disinfect': [
    [clear, pre, look, { kind: 'disinfect', medium: 'hotWater', temperature_degC: 85, time_min: 15 }, drain],
  ],
  'alkali-before-acid': [
    [clear, pre, { kind: 'acid', medium: 'hno3', concentration_pct: 1 }, rinse, alkali, rinse, drain],
  ],
  'rinse-between': [[clear, pre, alkali, look, peracid, last, drain]],
  'foam-stays-wet': [replaced(2, { time_min: 25 })],
  'look-before-disinfect': [sound.filter((s) => s !== look)],
  'contact-time': [replaced(5, { time_min: 9 })],
  'oxidiser-on-steel': [
    replaced(5, { medium: 'hypochlorite', concentration_pct: 0.03, temperature_degC: 25 }),
  ],
  'drinking-water': [replaced(6, { medium: 'recoveredWater' })],
  'ends-dry': [sound.slice(0, -1)],
  'no-high-pressure': [replaced(3, { pressure_bar: 80 })],
};

describe.each(Object.entries(faults))('%s', (rule, [steps, more]) => {
  test('is found broken, and says where', () => {
    const found = breachesOf(group(steps, more), on).find((b) => b.rule.id === rule);
    expect(found).toBeDefined();
    expect(found!.text).toMatch(/^[A-Z0-9].*\.$/);
  });
});

test('what is dangerous comes first', () => {
  const { rule } = breachesOf(group(faults['chlorine-gas'][0]), on)[0];
  expect(rule).toMatchObject({ id: 'chlorine-gas', danger: true });
});

test('every rule has a programme that breaks it', () => {
  expect(orderRules.map((r) => r.id).filter((id) => !(id in faults))).toEqual([]);
});

test('steps are proposed for every way and soil', () => {
  for (const way of ['inPlace', 'outOfPlace', 'foamAndRinse', 'byHand', 'dry'] as const)
    expect(stepsFor(way, 'starch').length).toBeGreaterThan(2);
});
