import { parseQuantity } from '@coveline/quantity';
import { useEffect, useId, useState } from 'react';
import { FieldError, Input, Label, Text, TextField } from 'react-aria-components';
import { m } from '../messages/index.ts';
import { locale, show } from './show.ts';

interface Props {
  readonly label: string;
  /** In `unit`; null while nothing is stated. */
  readonly value: number | null;
  readonly unit: string;
  readonly low?: number;
  readonly high?: number;
  /** Whether it may be left empty, which gives null. */
  readonly optional?: boolean;
  readonly placeholder?: string;
  /** Called when the field is left with a new, understood value. */
  readonly onChange: (value: number | null) => void;
}

const written = (value: number | null, unit: string) => (value === null ? '' : show(value, unit, 6));

/**
 * A plain text field that reads numbers with units, and says what it understood. Where a number can be read in two
 * ways it asks, and changes nothing until it is told.
 */
export function QuantityField({
  label,
  value,
  unit,
  low,
  high,
  optional = false,
  placeholder,
  onChange,
}: Props) {
  const [text, setText] = useState(written(value, unit));
  const group = useId();
  useEffect(() => setText(written(value, unit)), [value, unit]);

  const untouched = text === written(value, unit);
  const empty = text.trim() === '';
  const reading = untouched || (empty && optional) ? null : parseQuantity(text, unit, { locale });
  const outside =
    reading?.kind === 'quantity' &&
    (reading.value < (low ?? -Infinity) || reading.value > (high ?? Infinity));
  const error =
    reading?.kind === 'error'
      ? reading.message
      : outside
        ? m.quantity.outOfRange(show(low!, unit, 6), show(high!, unit, 6))
        : null;

  const take = (next: number | null) => {
    setText(written(next, unit));
    if (next !== value) onChange(next);
  };
  const leave = () => {
    if (untouched) return;
    if (empty && optional) take(null);
    else if (reading?.kind === 'quantity' && !outside) take(reading.value);
  };

  return (
    <TextField className="field" value={text} onChange={setText} onBlur={leave} isInvalid={error !== null}>
      <Label>{label}</Label>
      <Input
        inputMode="text"
        autoComplete="off"
        placeholder={placeholder ?? ''}
        onKeyDown={(e) => e.key === 'Enter' && leave()}
      />
      {reading?.kind === 'quantity' && !outside ? (
        <Text slot="description">{m.quantity.understood(reading.understood)}</Text>
      ) : null}
      {reading?.kind === 'ambiguous' ? (
        <fieldset className="ask" aria-labelledby={group}>
          <span id={group}>{m.quantity.ask}</span>
          {reading.readings.map((r) => (
            <button key={r.value} type="button" className="quiet" onClick={() => take(r.value)}>
              {r.understood}
            </button>
          ))}
        </fieldset>
      ) : null}
      <FieldError>{error}</FieldError>
    </TextField>
  );
}
