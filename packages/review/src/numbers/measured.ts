import type { Working, WorkingValue } from '@coveline/quantity';
import type { FindingNumber } from '../types.ts';

/** A number read off the model, with what it was read from. `unit` as `quantity` writes it. */
export function measured(
  label: string,
  value: number,
  unit: string,
  how: string,
  warnings: readonly string[] = [],
): FindingNumber {
  const result: WorkingValue = { symbol: 'x', name: label, value, unit, from: 'measured on the model' };
  const working: Working = {
    title: label,
    inputs: [],
    formula: [how],
    steps: [],
    result,
    source: 'the survey of this model',
    validity: 'as the model is drawn; the built machine may differ',
    warnings,
  };
  return { label, value, unit, working };
}

/** A number worked out from measured ones by one equation. */
export function derived(
  label: string,
  value: number,
  unit: string,
  formula: string,
  inputs: readonly WorkingValue[],
  validity: string,
): FindingNumber {
  return {
    label,
    value,
    unit,
    working: {
      title: label,
      inputs,
      formula: [formula],
      steps: [],
      result: { symbol: 'x', name: label, value, unit },
      source: 'geometry',
      validity,
      warnings: [],
    },
  };
}

export const input = (symbol: string, name: string, value: number, unit: string): WorkingValue => ({
  symbol,
  name,
  value,
  unit,
  from: 'measured on the model',
});
