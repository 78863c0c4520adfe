import type { FieldReading, ListInput, NumberInput } from '@coveline/engineering';
import { formatUnit } from '@coveline/quantity';
import { FieldError, Input, Label, Text, TextField } from 'react-aria-components';
import { m } from '../../messages/index.ts';
import { show } from '../../numbers/show.ts';
import { inputHint } from './input-hint.ts';
import { capital, sentence } from './sentence.ts';

interface Props {
  readonly input: NumberInput | ListInput;
  readonly text: string;
  readonly reading: FieldReading | undefined;
  readonly onChange: (text: string) => void;
}

/** A plain text field for a number or a list, with the echo of what was understood. */
export function InputField({ input, text, reading, onChange }: Props) {
  const problem = reading?.kind === 'problem' ? reading.message : null;
  const preset =
    input.kind === 'number' && input.default !== undefined ? show(input.default, input.unit, 6) : '';
  const plain = reading?.kind === 'understood' && reading.text === text.trim();
  return (
    <TextField className="field" value={text} onChange={onChange} isInvalid={problem !== null}>
      <Label>
        {capital(input.label)} <i>{input.symbol}</i>
        {input.unit === '1' ? null : `, ${formatUnit(input.unit)}`}
      </Label>
      <Input autoComplete="off" spellCheck={false} placeholder={preset} />
      <FieldError>{problem === null ? null : sentence(problem)}</FieldError>
      <Text slot="description">
        {reading?.kind === 'understood' && !plain ? (
          <span className="calc-echo">{m.quantity.understood(reading.text)}</span>
        ) : null}
        {inputHint(input)}
      </Text>
    </TextField>
  );
}
