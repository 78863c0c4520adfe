import { formatQuantity, formatUnit, type WorkingValue } from '@coveline/quantity';
import type { Outcome } from './calculation.ts';

const line = ({ symbol, name, value, unit, from, text }: WorkingValue) =>
  `  ${symbol} = ${formatQuantity(value, unit, { digits: 6 })}  ${name}${text ? `: ${text}` : ''}${from ? ` (${from})` : ''}`;

/** A result with its working as plain text, for the command line and for copying. */
export function resultText(
  outcome: Extract<Outcome, { kind: 'done' }>,
  understood: readonly string[],
): string {
  const { working, warnings, tables } = outcome;
  return [
    working.title,
    ...understood.map((text) => `  understood ${text}`),
    '',
    'Inputs',
    ...working.inputs.map(line),
    'Formula',
    ...working.formula.map((text) => `  ${text}`),
    ...(working.steps.length > 0 ? ['Steps', ...working.steps.map(line)] : []),
    'Result',
    line(working.result),
    ...tables.flatMap(({ title, columns, rows }) => [
      title,
      `  ${columns.map((c) => (c.unit === '1' || c.unit === '' ? c.name : `${c.name} (${formatUnit(c.unit)})`)).join('\t')}`,
      ...rows.map(
        (row) => `  ${row.map((v) => (typeof v === 'number' ? formatQuantity(v, '1') : v)).join('\t')}`,
      ),
    ]),
    ...warnings.map((text) => `Note: ${text}`),
    `Validity: ${working.validity}`,
    `Source: ${working.source}`,
    '',
  ].join('\n');
}
