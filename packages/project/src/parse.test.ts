import { expect, test } from 'vitest';
import { parseProject } from './index.ts';

const least = { schema: 'coveline.project/1', name: 'Filler' };

test('defaults are filled in', () => {
  const parsed = parseProject(least);
  if (!parsed.ok) throw new Error(parsed.errors.join(' '));
  expect(parsed.project.brief.cleaning.interval_h).toBe(24);
  expect(parsed.project.revisions).toEqual([]);
});

test.each<[string, unknown, string]>([
  ['nothing at all', null, 'The file: null was found, expected an object.'],
  ['no name', { schema: 'coveline.project/1' }, 'name: nothing is there, expected a text.'],
  [
    'another schema',
    { ...least, schema: 'coveline.project/9' },
    'schema: "coveline.project/9" was found, expected "coveline.project/1".',
  ],
  [
    'a pH of 15',
    { ...least, brief: { products: [{ name: 'milk', ph: 15 }] } },
    'brief.products[0].ph: 15 was found, expected at most 14.',
  ],
  [
    'an unknown level of care',
    { ...least, brief: { careLevel: 'extreme' } },
    'brief.careLevel: "extreme" was found, expected one of "basic", "raised", "high".',
  ],
  [
    'a number as text',
    { ...least, brief: { acceptedPool_mL: '1' } },
    'brief.acceptedPool_mL: "1" was found, expected a number.',
  ],
  [
    'an interval of zero',
    { ...least, brief: { cleaning: { interval_h: 0 } } },
    'brief.cleaning.interval_h: 0 was found, expected more than 0.',
  ],
  [
    'a concession without an end',
    {
      ...least,
      revisions: [{ id: 'r1', label: 'A', file: 'a.step' }],
      decisions: {
        r1: {
          f: {
            kind: 'concession',
            reason: 'x',
            because: 'cost',
            controlMeasures: [{ what: 'wipe' }],
            grantedBy: 'QA',
            until: 'never',
          },
        },
      },
    },
    'decisions.r1.f.until: "never" was found, expected a date such as 2027-01-31.',
  ],
  [
    'a concession without control',
    {
      ...least,
      revisions: [{ id: 'r1', label: 'A', file: 'a.step' }],
      decisions: {
        r1: {
          f: {
            kind: 'concession',
            reason: 'x',
            because: 'cost',
            controlMeasures: [],
            grantedBy: 'QA',
            until: '2027-01-31',
          },
        },
      },
    },
    'decisions.r1.f.controlMeasures: a list of 0 was found, expected a list of at least 1 entries.',
  ],
  [
    'parts of a revision that is not there',
    { ...least, parts: { r7: {} } },
    'parts: "r7" is no revision of this project, expected one of none.',
  ],
  [
    'one id for two revisions',
    {
      ...least,
      revisions: [
        { id: 'r1', label: 'A', file: 'a' },
        { id: 'r1', label: 'B', file: 'b' },
      ],
    },
    'revisions: the id "r1" is used twice, expected each id once.',
  ],
  [
    'one id for two calculations',
    { ...least, calculations: [1, 2].map(() => ({ id: 'c', calculation: 'pipe-flow', title: 'Shear' })) },
    'calculations: the id "c" is used twice, expected each id once.',
  ],
  [
    'a calculation on a revision that is not there',
    {
      ...least,
      calculations: [{ id: 'c', calculation: 'pipe-flow', title: 'Shear', about: { revision: 'r9' } }],
    },
    'calculations[0].about.revision: "r9" is no revision of this project, expected one of none.',
  ],
  [
    'numbers in a language that is none',
    { ...least, calculations: [{ id: 'c', calculation: 'pipe-flow', title: 'Shear', locale: 'en-a' }] },
    'calculations[0].locale: "en-a" was found, expected a language tag such as "en" or "de".',
  ],
])('%s is refused in one sentence', (_, json, sentence) => {
  const parsed = parseProject(json);
  expect(parsed).toEqual({ ok: false, errors: [sentence] });
});

test('each fault gets its own sentence', () => {
  const parsed = parseProject({ ...least, name: '', brief: { profile: 3, consumers: 'cats' } });
  expect(parsed).toEqual({
    ok: false,
    errors: [
      'name: "" was found, expected a text of at least 1 characters.',
      'brief.consumers: "cats" was found, expected one of "general", "vulnerable".',
      'brief.profile: 3 was found, expected a text.',
    ],
  });
});
