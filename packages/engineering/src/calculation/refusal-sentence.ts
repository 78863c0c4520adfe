import { formatUnit } from '@coveline/quantity';
import type { CalculationEntry } from './calculation.ts';
import type { TypedRun } from './from-text.ts';
import { inputName } from './inputs.ts';

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
const sentence = (text: string): string => (/[.!?]$/.test(text) ? capital(text) : `${capital(text)}.`);

/**
 * Why a run gave no number, in whole sentences for a page: a refusal names an input as it is typed on the command line
 * ("relativeHumidity"), a page by its label. Null when there is a number.
 */
export function refusalSentence(entry: CalculationEntry, { outcome, fields }: TypedRun): string | null {
  if (outcome.kind === 'done') return null;
  const inputs = Object.entries(entry.inputs);
  const unread = inputs.flatMap(([key, { label }]) => {
    const field = fields[key];
    return field?.kind === 'problem' ? [sentence(`${label}: ${field.message}`)] : [];
  });
  if (unread.length > 0) return unread.join(' ');
  for (const [key, input] of inputs) {
    const named = `${inputName(key)} (${input.label})`;
    if (outcome.reason.startsWith(named)) return sentence(input.label + outcome.reason.slice(named.length));
    if (outcome.reason.startsWith(`${inputName(key)} is missing: `))
      return 'unit' in input && input.unit !== '1'
        ? `Give the ${input.label} in ${formatUnit(input.unit)} or another unit of its kind.`
        : `Give the ${input.label}.`;
  }
  return sentence(outcome.reason);
}
