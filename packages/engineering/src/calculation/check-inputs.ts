import { formatQuantity } from '@coveline/quantity';
import type { Refusal } from './calculation.ts';
import {
  type Input,
  type Inputs,
  type InputValue,
  inputName,
  type ListInput,
  type NumberInput,
} from './inputs.ts';

/** Longer lists belong into a file; this keeps every calculation under a second and off the limits of the stack. */
const longestList = 50_000;

export interface CheckedInputs {
  readonly kind: 'checked';
  readonly values: Readonly<Record<string, InputValue>>;
  readonly warnings: readonly string[];
}

function show(value: number, unit: string): string {
  return formatQuantity(value, unit, { digits: 12 });
}

function range(spec: NumberInput | ListInput): string {
  if (spec.min !== undefined && spec.max !== undefined)
    return `from ${show(spec.min, spec.unit)} to ${show(spec.max, spec.unit)}`;
  if (spec.min !== undefined) return `${show(spec.min, spec.unit)} or more`;
  return spec.max === undefined ? '' : `${show(spec.max, spec.unit)} or less`;
}

function outside(value: number, spec: NumberInput | ListInput): boolean {
  return (spec.min !== undefined && value < spec.min) || (spec.max !== undefined && value > spec.max);
}

/** The sentence against a value, or nothing. */
function objection(key: string, spec: Input, value: InputValue): string | undefined {
  const name = inputName(key);
  switch (spec.kind) {
    case 'number':
      if (typeof value !== 'number' || !Number.isFinite(value))
        return `${name} (${spec.label}) must be a number in ${spec.unit}`;
      if (outside(value, spec))
        return `${name} (${spec.label}) is ${show(value, spec.unit)}, expected ${range(spec)}`;
      if (spec.whole && !Number.isInteger(value))
        return `${name} (${spec.label}) is ${value}, expected a whole number`;
      return undefined;
    case 'choice':
      return typeof value === 'string' && Object.hasOwn(spec.choices, value)
        ? undefined
        : `${name} (${spec.label}) is "${String(value)}", expected one of: ${Object.keys(spec.choices).join(', ')}`;
    case 'list': {
      if (!Array.isArray(value)) return `${name} (${spec.label}) must be a list of numbers in ${spec.unit}`;
      if (value.length < spec.minCount)
        return `${name} (${spec.label}) has ${value.length} values, expected at least ${spec.minCount}`;
      if (value.length > longestList)
        return `${name} (${spec.label}) has ${value.length} values, expected at most ${longestList}`;
      const bad = value.findIndex((v) => typeof v !== 'number' || !Number.isFinite(v) || outside(v, spec));
      return bad < 0
        ? undefined
        : `${name} (${spec.label}): value ${bad + 1} is ${show(value[bad], spec.unit)}, expected a number ${range(spec)}`;
    }
    case 'text':
      return typeof value === 'string' && value.trim() !== ''
        ? undefined
        : `${name} (${spec.label}) is empty, expected ${spec.format}`;
  }
}

/** Fill in defaults and check every value. The first objection is the answer. */
export function checkInputs(
  inputs: Inputs,
  given: Readonly<Record<string, InputValue | undefined>>,
): CheckedInputs | Refusal {
  const unknown = Object.keys(given).find((key) => !Object.hasOwn(inputs, key));
  if (unknown !== undefined)
    return {
      kind: 'refused',
      reason: `there is no input "${unknown}", expected: ${Object.keys(inputs).map(inputName).join(', ')}`,
    };
  const values: Record<string, InputValue> = {};
  const warnings: string[] = [];
  for (const [key, spec] of Object.entries(inputs)) {
    const value = given[key] ?? ('default' in spec ? spec.default : undefined);
    if (value === undefined) {
      const wanted = 'unit' in spec ? ` in ${spec.unit}` : '';
      return { kind: 'refused', reason: `${inputName(key)} is missing: give the ${spec.label}${wanted}` };
    }
    const reason = objection(key, spec, value);
    if (reason !== undefined) return { kind: 'refused', reason };
    if (spec.kind === 'number' && spec.usual !== undefined) {
      const [low, high] = spec.usual;
      if ((value as number) < low || (value as number) > high)
        warnings.push(
          `The ${spec.label} of ${show(value as number, spec.unit)} lies outside the range of the formula, ${show(low, spec.unit)} to ${show(high, spec.unit)}.`,
        );
    }
    values[key] = value;
  }
  return { kind: 'checked', values, warnings };
}
