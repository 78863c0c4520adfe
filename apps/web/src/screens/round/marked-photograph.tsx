import type { Mark, Photograph } from '@coveline/project';
import type { KeyboardEvent, MouseEvent } from 'react';
import { api } from '../../api/client.ts';
import { m } from '../../messages/index.ts';
import { SavedWords } from '../brief/saved-words.tsx';
import { useMachineData } from '../machine/machine-context.ts';

interface Props {
  readonly photograph: Photograph;
  readonly onChange: (photograph: Photograph) => void;
  readonly onRemove: () => void;
}

/** How far an arrow key moves a mark, of the picture. */
const step = 0.02;
const ways: Partial<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-step, 0],
  ArrowRight: [step, 0],
  ArrowUp: [0, -step],
  ArrowDown: [0, step],
};
const inside = (share: number) => Math.min(1, Math.max(0, Math.round(share * 1000) / 1000));

/** A photograph with numbered marks: a click sets one, arrow keys move it, each has its words below. */
export function MarkedPhotograph({ photograph, onChange, onRemove }: Props) {
  const { machine } = useMachineData();
  const { marks } = photograph;
  const words = m.photographs;
  const setMarks = (next: Mark[]) => onChange({ ...photograph, marks: next });
  const add = (x: number, y: number) => setMarks([...marks, { x: inside(x), y: inside(y), words: '' }]);
  const change = (index: number, part: Partial<Mark>) =>
    setMarks(marks.map((mark, i) => (i === index ? { ...mark, ...part } : mark)));

  const click = (event: MouseEvent<HTMLElement>) => {
    const box = event.currentTarget.getBoundingClientRect();
    add((event.clientX - box.left) / box.width, (event.clientY - box.top) / box.height);
  };
  const key = (event: KeyboardEvent, index: number) => {
    const way = ways[event.key];
    if (!way) return;
    event.preventDefault();
    const { x, y } = marks[index];
    change(index, { x: inside(x + way[0]), y: inside(y + way[1]) });
  };
  return (
    <figure className="photograph">
      <div className="photograph-field">
        {/* biome-ignore lint/a11y/useKeyWithClickEvents: the button "Set a mark" and the arrow keys do the same */}
        <img
          src={api.photographAddress(machine.id, photograph.sha256)}
          alt={words.alt(photograph.name)}
          onClick={click}
        />
        {marks.map((mark, i) => (
          <button
            // biome-ignore lint/suspicious/noArrayIndexKey: a mark is its number
            key={i}
            type="button"
            className="photograph-mark"
            style={{ insetInlineStart: `${mark.x * 100}%`, insetBlockStart: `${mark.y * 100}%` }}
            aria-label={words.mark(i + 1, mark.words)}
            onKeyDown={(event) => key(event, i)}
          >
            {i + 1}
          </button>
        ))}
      </div>
      <figcaption>
        <p className="soft">{words.hint}</p>
        {marks.map((mark, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a mark is its number
          <div key={i} className="photograph-words">
            <SavedWords
              label={words.markWords(i + 1)}
              value={mark.words}
              onSave={(text) => change(i, { words: text })}
            />
            <button
              type="button"
              className="quiet"
              aria-label={words.removeMark(i + 1)}
              onClick={() => setMarks(marks.filter((_, k) => k !== i))}
            >
              {words.remove}
            </button>
          </div>
        ))}
        <button type="button" className="outlined" onClick={() => add(0.5, 0.5)}>
          {words.addMark}
        </button>{' '}
        <button type="button" className="quiet" onClick={onRemove}>
          {words.removePhotograph}
        </button>
      </figcaption>
    </figure>
  );
}
