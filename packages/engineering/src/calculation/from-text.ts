import { formatQuantity, type ParseOptions, parseQuantity } from '@coveline/quantity';
import type { CalculationEntry, Outcome } from './calculation.ts';
import { type Input, type InputValue, inputName } from './inputs.ts';

/** A calculation run from what a person typed. */
export interface TypedRun {
  readonly outcome: Outcome;
  /** What was understood of each value: "diameter: 2 in = 50.8 mm". */
  readonly understood: readonly string[];
  /** The same by key of the input, with the sentence where a value could not be read. */
  readonly fields: Readonly<Record<string, FieldReading>>;
}

/** What was understood of one text, or one sentence that says why nothing was. */
export type FieldReading =
  | { readonly kind: 'understood'; readonly text: string }
  | { readonly kind: 'problem'; readonly message: string };

type Read =
  | { readonly kind: 'value'; readonly value: InputValue; readonly understood: string }
  | { readonly kind: 'problem'; readonly message: string };

function readOne(spec: Input, text: string, options: ParseOptions): Read {
  if (spec.kind === 'choice' || spec.kind === 'text')
    return {
      kind: 'value',
      value: text,
      understood: spec.kind === 'choice' ? text : `${text.length} characters`,
    };
  if (spec.kind === 'number') {
    const parsed = parseQuantity(text, spec.unit, options);
    return parsed.kind === 'quantity'
      ? { kind: 'value', value: parsed.value, understood: parsed.understood }
      : { kind: 'problem', message: parsed.message };
  }
  return readList(spec.unit, text, options);
}

/** Values between semicolons, or between blanks where there is no semicolon; a unit behind the last one holds for all. */
function readList(unit: string, text: string, options: ParseOptions): Read {
  const trimmed = text.trim().replace(/;$/, '');
  const tail = /[\d.]\s*([^\d\s;.,+-][^;]*)$/.exec(trimmed)?.[1]?.trim() ?? '';
  const body = tail === '' ? trimmed : trimmed.slice(0, trimmed.length - tail.length).trim();
  const items = body.split(body.includes(';') ? ';' : /\s+/).map((item) => item.trim());
  const style = { digits: 12, ...(options.locale === undefined ? {} : { locale: options.locale }) };
  const values: number[] = [];
  for (const item of items) {
    const parsed = parseQuantity(
      /[A-Za-z°%"µ]/.test(item.replace(/e[+-]?\d/i, '')) ? item : `${item} ${tail}`,
      unit,
      options,
    );
    if (parsed.kind !== 'quantity') return { kind: 'problem', message: parsed.message };
    values.push(parsed.value);
  }
  const last = values[values.length - 1];
  return {
    kind: 'value',
    value: values,
    understood: `${values.length} values, ${formatQuantity(values[0], '1', style)} to ${formatQuantity(last, unit, style)}`,
  };
}

/**
 * Run a calculation with texts such as `{ diameter: '2 in', temperature: '80C' }`. Names are those of `inputName`, or
 * the full keys. Everything that cannot be read comes back as a refusal with one sentence per value.
 */
export function runFromText(
  entry: CalculationEntry,
  texts: Readonly<Record<string, string>>,
  options: ParseOptions = {},
): TypedRun {
  const keys = Object.keys(entry.inputs);
  const values: Record<string, InputValue> = {};
  const understood: string[] = [];
  const problems: string[] = [];
  const fields: Record<string, FieldReading> = {};
  for (const [name, text] of Object.entries(texts)) {
    const key = keys.find((k) => k === name) ?? keys.find((k) => inputName(k) === name);
    if (key === undefined) {
      problems.push(`there is no input "${name}", expected: ${keys.map(inputName).join(', ')}`);
      continue;
    }
    const read = readOne(entry.inputs[key], text, options);
    if (read.kind === 'problem') {
      fields[key] = read;
      problems.push(`${name}: ${read.message}`);
    } else {
      values[key] = read.value;
      fields[key] = { kind: 'understood', text: read.understood };
      understood.push(`${inputName(key)}: ${read.understood}`);
    }
  }
  if (problems.length > 0)
    return { outcome: { kind: 'refused', reason: problems.join('; ') }, understood, fields };
  return { outcome: entry.evaluate(values), understood, fields };
}
