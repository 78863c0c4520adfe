import type { CalculationEntry, FieldReading, Input } from '@coveline/engineering';
import { m } from '../../messages/index.ts';
import { Choice } from '../../shell/choice.tsx';
import type { Given } from './given.ts';
import { InputField } from './input-field.tsx';
import { capital } from './sentence.ts';
import { TextInputField } from './text-field.tsx';

interface Props {
  readonly entry: CalculationEntry;
  readonly given: Given;
  readonly fields: Readonly<Record<string, FieldReading>>;
  readonly onChange: (key: string, value: string | File) => void;
}

/** One field for each input, made from its description. */
export function InputsForm({ entry, given, fields, onChange }: Props) {
  return Object.entries<Input>(entry.inputs).map(([key, input]) => {
    const value = given[key] ?? '';
    const change = (next: string | File) => onChange(key, next);
    switch (input.kind) {
      case 'choice':
        return (
          <Choice
            key={key}
            label={capital(input.label)}
            value={value === '' ? (input.default ?? null) : String(value)}
            options={Object.entries<string>(input.choices)}
            placeholder={m.calculations.choose}
            onChange={change}
          />
        );
      case 'text':
        return (
          <TextInputField
            key={key}
            input={input}
            value={value}
            lines={String(entry.example.inputs[key]).includes('\n')}
            onChange={change}
          />
        );
      default:
        return (
          <InputField key={key} input={input} text={String(value)} reading={fields[key]} onChange={change} />
        );
    }
  });
}
