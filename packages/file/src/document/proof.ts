/** Where samples are taken, by which method, against which limit and on whose authority. */
import { samplingLimitById, samplingMethodById } from '@coveline/catalogue';
import { formatQuantity } from '@coveline/quantity';
import type { PointTest } from '@coveline/review';
import type { FileRequest } from '../request.ts';
import type { ProofContent } from './content.ts';
import type { Printer } from './printable.ts';
import type { WorkingBook } from './workings.ts';

const whenWords = {
  afterCleaning: 'after cleaning',
  afterDisinfection: 'after disinfection',
  beforeStart: 'before the start',
} as const;

export function proofContent({ review }: FileRequest, { text }: Printer, book: WorkingBook): ProofContent {
  const { points, validation, stages } = review.proof;
  return {
    validation: validation
      ? [
          {
            label: validation.label,
            value: formatQuantity(validation.value, validation.unit),
            working: book.numberOf(validation.working, null),
          },
        ]
      : [],
    points: points.map((p, i) => ({
      number: i + 1,
      name: text(p.name),
      finding: review.findings.findIndex((f) => f.id === p.finding) + 1,
      every: p.everyDays === 1 ? 'each day' : `every ${p.everyDays} days`,
      tests: p.tests.map((t) => text(inWords(t))),
    })),
    stages: stages.map((s) => ({ label: text(s.name), value: text(s.text) })),
  };
}

const ofWords: Readonly<Record<PointTest['of'], string>> = {
  visual: 'what can be seen',
  aerobic: 'aerobic count',
  enterobacteriaceae: 'Enterobacteriaceae',
  listeria: 'Listeria',
  atp: 'ATP',
  protein: 'protein',
  allergen: 'allergen',
  rinseCount: 'count',
  settle: 'colonies',
};

function inWords(test: PointTest): string {
  const method = samplingMethodById.get(test.method)!;
  const limit = samplingLimitById.get(test.limit)!;
  const bound =
    limit.actAbove === 0 ? 'not detected' : `act above ${formatQuantity(limit.actAbove, limit.unit)}`;
  return `${method.name} for ${ofWords[test.of]}${test.neutraliser ? ' with neutraliser' : ''}, ${whenWords[test.when]}: ${bound} (${limit.standing})`;
}
