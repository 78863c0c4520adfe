import type { CalculationEntry } from '@coveline/engineering';
import { decimalSeparator, formatUnit } from '@coveline/quantity';

/** The worked example of a calculation as a person would type it. */
export function exampleTexts(entry: CalculationEntry, locale: string): Record<string, string> {
  const decimal = decimalSeparator(locale);
  const texts: Record<string, string> = {};
  for (const [key, value] of Object.entries(entry.example.inputs)) {
    const input = entry.inputs[key];
    const unit = 'unit' in input && input.unit !== '1' ? ` ${formatUnit(input.unit)}` : '';
    const write = (n: number) => String(n).replace('.', decimal);
    if (typeof value === 'string') texts[key] = value;
    else if (typeof value === 'number') texts[key] = `${write(value)}${unit}`;
    else texts[key] = `${value.map(write).join('; ')}${unit}`;
  }
  return texts;
}
