import { plant } from './plant.ts';
import type { Question } from './question.ts';
import { structure } from './structure.ts';
import { surroundings } from './surroundings.ts';
import { works } from './works.ts';

/** In the order of a round from the floor to the filling head, then the matters of the whole plant. */
export const questions: readonly Question[] = [...structure, ...works, ...surroundings, ...plant];

export const questionById: ReadonlyMap<string, Question> = new Map(questions.map((q) => [q.id, q]));

/** Matters of the whole plant, with their headings. */
export const matters: readonly { readonly id: string; readonly name: string }[] = [
  { id: 'use', name: 'Use of the machine' },
  { id: 'people', name: 'People' },
  { id: 'chemistry', name: 'Water and chemistry' },
  { id: 'proof', name: 'Samples and results' },
  { id: 'change', name: 'Changes' },
];
