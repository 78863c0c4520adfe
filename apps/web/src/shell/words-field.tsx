import { Input, Label, Text, TextArea, TextField } from 'react-aria-components';

interface Props {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  /** Several lines; one without it. */
  readonly lines?: number;
  readonly type?: 'text' | 'date';
  readonly invalid?: boolean;
  readonly hint?: string;
  readonly onBlur?: () => void;
}

/** A field for words. */
export function WordsField({
  label,
  value,
  onChange,
  lines,
  type = 'text',
  invalid = false,
  hint,
  onBlur,
}: Props) {
  return (
    <TextField
      className="field"
      value={value}
      onChange={onChange}
      isInvalid={invalid}
      type={type}
      {...(onBlur ? { onBlur } : {})}
    >
      <Label>{label}</Label>
      {lines === undefined ? <Input autoComplete="off" /> : <TextArea rows={lines} />}
      {hint ? <Text slot="description">{hint}</Text> : null}
    </TextField>
  );
}
