import type { TextInput } from '@coveline/engineering';
import type { ClipboardEvent } from 'react';
import { Button, FileTrigger, Input, Label, Text, TextArea, TextField } from 'react-aria-components';
import { m } from '../../messages/index.ts';
import { show } from '../../numbers/show.ts';
import { longestInField } from './given.ts';
import { capital } from './sentence.ts';

interface Props {
  readonly input: TextInput;
  readonly value: string | File;
  /** Whether it usually has several lines, as a file has. */
  readonly lines: boolean;
  readonly onChange: (value: string | File) => void;
}

/** A text to type, to paste or to take from a file. Long ones stay a file beside the field. */
export function TextInputField({ input, value, lines, onChange }: Props) {
  const hint = <Text slot="description">{input.format}</Text>;
  if (!lines)
    return (
      <TextField className="field" value={typeof value === 'string' ? value : ''} onChange={onChange}>
        <Label>{capital(input.label)}</Label>
        <Input autoComplete="off" spellCheck={false} />
        {hint}
      </TextField>
    );
  const take = async (file: File | undefined) => {
    if (file) onChange(file.size > longestInField ? file : await file.text());
  };
  const paste = (event: ClipboardEvent) => {
    const text = event.clipboardData.getData('text/plain');
    if (text.length <= longestInField) return;
    event.preventDefault();
    onChange(new File([text], m.calculations.pasted));
  };
  return (
    <div className="calc-text">
      {typeof value === 'string' ? (
        <TextField className="field" value={value} onChange={onChange}>
          <Label>{capital(input.label)}</Label>
          <TextArea rows={6} spellCheck={false} onPaste={paste} wrap="off" />
          {hint}
        </TextField>
      ) : (
        <p className="calc-file">
          <span className="soft">{capital(input.label)}</span>
          {m.calculations.file(value.name, show(value.size / 1e6, '1', 3))}
        </p>
      )}
      <div className="calc-text-does">
        <FileTrigger onSelect={(list) => take(list?.[0])}>
          <Button className="outlined">{m.calculations.chooseFile}</Button>
        </FileTrigger>
        {typeof value === 'string' ? null : (
          <Button className="quiet" onPress={() => onChange('')}>
            {m.calculations.removeFile}
          </Button>
        )}
      </div>
    </div>
  );
}
