/** Calculations in words: the list, and the help of one. */
import { type CalculationEntry, type Input, inputName, subjects } from '@coveline/engineering';
import { formatQuantity, formatUnit } from '@coveline/quantity';

export function calculationList(): string {
  const width = Math.max(...subjects.flatMap((s) => s.calculations.map((c) => c.name.length)));
  const blocks = subjects.map(({ title, calculations }) =>
    [title, ...calculations.map((c) => `  ${c.name.padEnd(width)}  ${c.title}`)].join('\n'),
  );
  return `${blocks.join('\n\n')}\n\ncoveline calc NAME --help shows what a calculation needs.\n`;
}

export function calculationHelp(entry: CalculationEntry): string {
  const given = Object.entries(entry.example.inputs).map(([key, value]) =>
    sample(key, entry.inputs[key], value),
  );
  return [
    entry.title,
    '',
    'Inputs',
    ...Object.entries(entry.inputs).map(([key, input]) => `  ${inputName(key)}: ${described(input)}`),
    '',
    'Equation',
    ...entry.equation.map((line) => `  ${line}`),
    '',
    `Result    ${Object.values(entry.outputs)
      .map((o) => (o.unit === '1' ? o.label : `${o.label} (${formatUnit(o.unit)})`))
      .join('; ')}`,
    `Validity  ${entry.validity}`,
    `Source    ${entry.source}`,
    ...(entry.caution ? [`Caution   ${entry.caution}`] : []),
    '',
    `Example   coveline calc ${entry.name} ${given.join(' ')}`,
    '',
  ].join('\n');
}

function sample(key: string, input: Input, value: unknown): string {
  const unit = 'unit' in input && input.unit !== '1' ? input.unit : '';
  const number = Array.isArray(value) ? value.join('; ') : String(value);
  // "100 1/yr" must not run together to "1001/yr".
  const text = Array.isArray(value) || /^\d/.test(unit) ? `${number} ${unit}`.trim() : `${number}${unit}`;
  return /[\s;()]/.test(text) ? `"${inputName(key)}=${text}"` : `${inputName(key)}=${text}`;
}

function described(input: Input): string {
  switch (input.kind) {
    case 'number': {
      const range = [
        input.min === undefined ? '' : `from ${formatQuantity(input.min, input.unit)}`,
        input.max === undefined ? '' : `to ${formatQuantity(input.max, input.unit)}`,
      ].filter((part) => part !== '');
      const preset =
        input.default === undefined ? 'needed' : `default ${formatQuantity(input.default, input.unit)}`;
      return [input.label, preset, range.join(' '), input.from ?? '']
        .filter((part) => part !== '')
        .join(', ');
    }
    case 'choice':
      return `${input.label}: ${Object.entries<string>(input.choices)
        .map(([name, meaning]) => `${name} (${meaning})`)
        .join(', ')}${input.default === undefined ? '' : `; default ${input.default}`}`;
    case 'list':
      return `${input.label}, at least ${input.minCount} values in ${formatUnit(input.unit)}, separated by ";"`;
    case 'text':
      return `${input.label}: ${input.format}; @FILE reads it from a file`;
  }
}
