import { samplingLimitById } from '@coveline/catalogue';
import type { SampleResult } from '@coveline/project';
import { type ReadResults, readResults, type SamplingPoint, type Targets } from '@coveline/review';
import { useState } from 'react';
import { m } from '../../messages/index.ts';
import { locale } from '../../numbers/show.ts';
import { WordsField } from '../../shell/words-field.tsx';

interface Props {
  readonly points: readonly SamplingPoint[];
  readonly onKeep: (results: readonly Omit<SampleResult, 'id'>[]) => void;
}

/** A table from a laboratory, pasted. What can be read is shown before anything is kept. */
export function PasteResults({ points, onKeep }: Props) {
  const words = m.proof.paste;
  const [text, setText] = useState('');
  const read: ReadResults | null = text.trim() === '' ? null : readResults(text, targetsOf(points), locale);
  return (
    <details>
      <summary>{words.title}</summary>
      <p className="soft">{words.hint}</p>
      <WordsField label={words.table} value={text} onChange={setText} lines={6} />
      {read ? (
        <>
          {read.refused.length > 0 ? (
            <ul className="missing">
              {read.refused.map((r) => (
                <li key={r}>{r}</li>
              ))}
            </ul>
          ) : null}
          <button
            type="button"
            className="outlined"
            disabled={read.results.length === 0}
            onClick={() => {
              onKeep(read.results);
              setText('');
            }}
          >
            {words.keep(read.results.length)}
          </button>
        </>
      ) : null}
    </details>
  );
}

/** A point is named by its number in the plan or by a piece of its name, a test by what it looks for. */
function targetsOf(points: readonly SamplingPoint[]): Targets {
  const tests = [...new Map(points.flatMap((p) => p.tests).map((t) => [t.of, t])).values()];
  return {
    pointOf: (words) => {
      const text = words.trim().toLowerCase();
      const byNumber = points[Number(text) - 1];
      const byName = points.filter((p) => text !== '' && p.name.toLowerCase().includes(text));
      return byNumber?.id ?? (byName.length === 1 ? byName[0].id : null);
    },
    testOf: (words) => {
      const text = words.trim().toLowerCase();
      const found = tests.find(
        (t) => t.of.toLowerCase() === text || m.proof.measured[t.of].toLowerCase() === text,
      );
      return found
        ? { of: found.of, limit: found.limit, unit: samplingLimitById.get(found.limit)!.unit }
        : null;
    },
  };
}
