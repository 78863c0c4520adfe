import { type CalculationEntry, subjects } from '@coveline/engineering';
import { type FormEvent, useEffect, useState } from 'react';
import { Input, Label, SearchField, Text } from 'react-aria-components';
import { m } from '../../messages/index.ts';
import { Link } from '../../routing/link.tsx';
import { go } from '../../routing/use-route.ts';

/** Every word of what is searched in, in small letters. */
const wordsOf = (subject: string, { name, title, inputs, outputs }: CalculationEntry): string =>
  [
    subject,
    name,
    title,
    ...Object.values(inputs).map((i) => i.label),
    ...Object.values(outputs).map((o) => o.label),
  ]
    .join(' ')
    .toLowerCase();

const all = subjects.map(({ title, calculations }) => ({
  title,
  calculations: calculations.map((entry) => ({ entry, words: wordsOf(title, entry) })),
}));

/** All calculations by subject, fewer while words are typed. */
export function CalculationList() {
  const [text, setText] = useState('');
  useEffect(() => {
    document.title = `${m.calculations.title} · ${m.product}`;
  }, []);
  const words = text.toLowerCase().split(/\s+/);
  const shown = all
    .map((s) => ({
      title: s.title,
      calculations: s.calculations.filter((c) => words.every((w) => c.words.includes(w))),
    }))
    .filter((s) => s.calculations.length > 0);
  const count = shown.reduce((sum, s) => sum + s.calculations.length, 0);
  const openFirst = (event: FormEvent) => {
    event.preventDefault();
    const first = shown[0]?.calculations[0];
    if (text !== '' && first) go({ at: 'calculations', name: first.entry.name, kept: null });
  };
  return (
    <>
      <h1>{m.calculations.title}</h1>
      <p>{m.calculations.intro}</p>
      <search>
        <form onSubmit={openFirst} className="calc-find">
          <SearchField className="field" value={text} onChange={setText} autoFocus>
            <Label>{m.calculations.find}</Label>
            <Input />
            <Text slot="description">{m.calculations.findHint}</Text>
          </SearchField>
          <p className="soft figure" role="status">
            {count === 0 ? m.calculations.none : m.calculations.count(count)}
          </p>
        </form>
      </search>
      {shown.map(({ title, calculations }) => (
        <section key={title} className="calc-subject" aria-label={title}>
          <h2>{title}</h2>
          <ul className="plain">
            {calculations.map(({ entry }) => (
              <li key={entry.name}>
                <Link to={{ at: 'calculations', name: entry.name, kept: null }}>{entry.title}</Link>
                <span className="soft">{entry.name}</span>
              </li>
            ))}
          </ul>
        </section>
      ))}
    </>
  );
}
