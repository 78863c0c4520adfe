import { expect, test } from 'vitest';
import { elements, matters, questions, requirementById } from '../index.ts';

const sentence = /^[A-Z0-9].*[.]$/s;

test('there are questions enough for a round, each of its own', () => {
  expect(questions.length).toBeGreaterThanOrEqual(75);
  expect(new Set(questions.map((q) => q.id)).size).toBe(questions.length);
  expect(new Set(questions.map((q) => q.text)).size).toBe(questions.length);
});

test.each(questions.map((q) => [q.id, q] as const))(
  '%s says why, what is good and how to find out',
  (_, q) => {
    expect(q.text).toMatch(/^[A-Z].*\?$/s);
    for (const text of [q.why, q.good, q.how]) expect(text).toMatch(sentence);
    expect([...elements, ...matters].map((e) => e.id)).toContain(q.about);
  },
);

test('what an answer shows is a requirement that looking, measuring by hand or papers can show', () => {
  for (const q of questions) {
    for (const id of q.shows) {
      const requirement = requirementById.get(id);
      expect(requirement, `${q.id} shows ${id}`).toBeDefined();
    }
  }
});

test('every element but the surfaces in general has a question', () => {
  const asked = new Set(questions.map((q) => q.about));
  const silent = elements.filter((e) => !asked.has(e.id)).map((e) => e.id);
  expect(silent).toEqual(['general', 'castor']);
});
