import type { Answer } from '@coveline/project';
import { parseQuantity } from '@coveline/quantity';
import type { RoundItem } from '@coveline/review';
import { useEffect, useRef } from 'react';
import { Label, Radio, RadioGroup } from 'react-aria-components';
import { m } from '../../messages/index.ts';
import { locale, showDay, today } from '../../numbers/show.ts';
import { announce } from '../../state/announce.ts';
import { useChange } from '../../state/changes.ts';
import { usePreferences } from '../../state/preferences.ts';
import { SavedWords } from '../brief/saved-words.tsx';
import { useMachineData } from '../machine/machine-context.ts';
import { Photographs } from './photographs.tsx';

type State = Answer['state'] | 'open';
const states: readonly State[] = ['open', 'asItShould', 'notAsItShould', 'notHere'];

/** A question with its reason and what was found; every change of the answer is kept at once. */
export function ItemCard({ item }: { readonly item: RoundItem }) {
  const { machine, revision, route } = useMachineData();
  const card = useRef<HTMLElement>(null);
  const named = route.item === item.id;
  useEffect(() => {
    if (named) card.current?.scrollIntoView({ block: 'start' });
  }, [named]);
  const { name } = usePreferences();
  const change = useChange(machine.id);
  const words = m.round;
  // The review is read again after a change; until then the project knows better.
  const answer = (revision && machine.project.answers[revision.id]?.[item.id]) ?? null;

  const keep = (next: Answer | null) =>
    revision && change.mutate({ do: 'answer', revision: revision.id, item: item.id, answer: next });
  const set = (part: Partial<Answer>) => {
    const by = name.trim();
    if (by === '') return announce(words.needsName);
    const before = answer ?? { state: 'asItShould' as const, words: '', reading: '', photographs: [] };
    keep({ ...before, ...part, by, on: today() });
  };
  const setState = (state: State) => (state === 'open' ? keep(null) : set({ state }));

  const reading =
    item.reading && answer && answer.reading !== ''
      ? parseQuantity(answer.reading, item.reading.unit, { locale })
      : null;
  return (
    <article ref={card} className="item" aria-labelledby={`item-${item.id}`}>
      <h3 id={`item-${item.id}`}>{item.text}</h3>
      <dl className="item-facts">
        <dt>{words.why}</dt>
        <dd>{item.why}</dd>
        {item.good === item.text ? null : (
          <>
            <dt>{words.good}</dt>
            <dd>{item.good}</dd>
          </>
        )}
        <dt>{words.how}</dt>
        <dd>{item.how}</dd>
      </dl>
      <RadioGroup
        className="row item-state"
        orientation="horizontal"
        value={answer?.state ?? 'open'}
        onChange={(value) => setState(value as State)}
        isDisabled={name.trim() === ''}
      >
        <Label>{words.state}</Label>
        {states.map((state) => (
          <Radio key={state} value={state}>
            {words.states[state]}
          </Radio>
        ))}
      </RadioGroup>
      {name.trim() === '' ? <p className="missing">{words.needsName}</p> : null}
      {answer ? (
        <div className="item-answer">
          <SavedWords
            label={words.words}
            value={answer.words}
            onSave={(text) => set({ words: text })}
            lines={2}
          />
          {item.reading ? (
            <SavedWords
              label={words.reading(item.reading.what, item.reading.unit)}
              value={answer.reading}
              onSave={(text) => set({ reading: text })}
              {...(reading?.kind === 'error' ? { hint: words.badReading(reading.message) } : {})}
            />
          ) : null}
          <Photographs photographs={answer.photographs} onChange={(photographs) => set({ photographs })} />
          <p className="soft">{words.signed(answer.by, showDay(answer.on))}</p>
        </div>
      ) : null}
    </article>
  );
}
