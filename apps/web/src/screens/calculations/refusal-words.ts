import { type CalculationEntry, inputName, type TypedRun } from '@coveline/engineering';
import { formatUnit } from '@coveline/quantity';
import { m } from '../../messages/index.ts';
import { sentence } from './sentence.ts';

/**
 * Why there is no result, in the words of the page: a refusal names an input as it is typed on the command line
 * ("relativeHumidity"), the page by its label.
 */
export function refusalWords(entry: CalculationEntry, run: TypedRun, reason: string): string {
  const inputs = Object.entries(entry.inputs);
  const unread = inputs.flatMap(([key, { label }]) => {
    const field = run.fields[key];
    return field?.kind === 'problem' ? [sentence(`${label}: ${field.message}`)] : [];
  });
  if (unread.length > 0) return unread.join(' ');
  for (const [key, input] of inputs) {
    const named = `${inputName(key)} (${input.label})`;
    if (reason.startsWith(named)) return sentence(input.label + reason.slice(named.length));
    if (reason.startsWith(`${inputName(key)} is missing: `))
      return 'unit' in input && input.unit !== '1'
        ? m.calculations.give(input.label, formatUnit(input.unit))
        : m.calculations.giveOne(input.label);
  }
  return sentence(reason);
}
