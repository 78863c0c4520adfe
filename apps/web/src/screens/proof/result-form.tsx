import { samplingLimitById } from '@coveline/catalogue';
import type { SampleResult } from '@coveline/project';
import { parseQuantity } from '@coveline/quantity';
import type { SamplingPoint } from '@coveline/review';
import { type FormEvent, useState } from 'react';
import { m } from '../../messages/index.ts';
import { locale, today } from '../../numbers/show.ts';
import { Choice } from '../../shell/choice.tsx';
import { WordsField } from '../../shell/words-field.tsx';
import { usePreferences } from '../../state/preferences.ts';

interface Props {
  readonly points: readonly SamplingPoint[];
  readonly onKeep: (result: Omit<SampleResult, 'id'>) => void;
}

/** One result of one sample, typed beside the machine. */
export function ResultForm({ points, onKeep }: Props) {
  const words = m.proof.form;
  const { name } = usePreferences();
  const [point, setPoint] = useState(points[0].id);
  const tests = points.find((p) => p.id === point)?.tests ?? points[0].tests;
  const [of, setOf] = useState<string>(tests[0].of);
  const test = tests.find((t) => t.of === of) ?? tests[0];
  const [on, setOn] = useState(today());
  const [text, setText] = useState('');
  const [note, setNote] = useState('');
  const [error, setError] = useState<string | null>(null);
  const { unit } = samplingLimitById.get(test.limit)!;

  const keep = (event: FormEvent) => {
    event.preventDefault();
    const below = text.trim().startsWith('<');
    const reading = parseQuantity(below ? text.trim().slice(1) : text, unit, { locale });
    if (reading.kind !== 'quantity' || reading.value < 0)
      return setError(reading.kind === 'error' ? reading.message : words.unclear);
    if (on === '') return setError(words.needDate);
    setError(null);
    setText('');
    onKeep({
      point,
      of: test.of,
      limit: test.limit,
      on,
      value: below ? null : reading.value,
      detectionLimit: below ? reading.value : null,
      by: name,
      note,
      action: '',
    });
  };
  return (
    <form className="result-form" onSubmit={keep}>
      <Choice
        label={m.proof.columns.point}
        value={point}
        options={points.map((p, i) => [p.id, `${i + 1} ${p.name}`] as const)}
        onChange={setPoint}
      />
      <Choice
        label={m.proof.columns.test}
        value={test.of}
        options={tests.map((t) => [t.of, m.proof.measured[t.of]] as const)}
        onChange={setOf}
      />
      <WordsField label={words.on} type="date" value={on} onChange={setOn} />
      <WordsField
        label={words.value(unit)}
        hint={words.valueHint}
        value={text}
        onChange={setText}
        invalid={error !== null}
      />
      <WordsField label={words.note} value={note} onChange={setNote} />
      <button type="submit" className="outlined">
        {words.keep}
      </button>
      {error ? <p className="missing">{error}</p> : null}
    </form>
  );
}
