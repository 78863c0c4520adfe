import { useEffect, useState } from 'react';
import { WordsField } from '../../shell/words-field.tsx';

interface Props {
  readonly label: string;
  readonly value: string;
  readonly onSave: (value: string) => void;
  readonly lines?: number;
  readonly hint?: string;
}

/** A field for words that is kept when it is left. */
export function SavedWords({ label, value, onSave, lines, hint }: Props) {
  const [text, setText] = useState(value);
  useEffect(() => setText(value), [value]);
  return (
    <WordsField
      label={label}
      value={text}
      onChange={setText}
      onBlur={() => text !== value && onSave(text)}
      {...(lines === undefined ? {} : { lines })}
      {...(hint === undefined ? {} : { hint })}
    />
  );
}
