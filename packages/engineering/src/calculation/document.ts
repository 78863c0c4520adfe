/** The manual of the calculations as Markdown, made from the same descriptions that run them. */
import { formatQuantity, formatUnit } from '@coveline/quantity';
import type { CalculationEntry } from './calculation.ts';
import { type Input, inputName } from './inputs.ts';

const cell = (text: string) => text.replaceAll('|', '\\|');

function rangeOf(spec: Input): string {
  if (spec.kind === 'choice') return Object.keys(spec.choices).join(', ');
  if (spec.kind === 'text') return spec.format;
  const show = (value: number) => formatQuantity(value, spec.unit);
  const ends = [
    spec.min === undefined ? '' : `from ${show(spec.min)}`,
    spec.max === undefined ? '' : `to ${show(spec.max)}`,
  ];
  const count = spec.kind === 'list' ? `at least ${spec.minCount} values` : '';
  return [count, ...ends].filter((part) => part !== '').join(' ');
}

function defaultOf(spec: Input): string {
  if (spec.kind === 'number' && spec.default !== undefined)
    return `${formatQuantity(spec.default, spec.unit)}${spec.from === undefined ? '' : ` (${spec.from})`}`;
  return spec.kind === 'choice' && spec.default !== undefined ? spec.default : 'needed';
}

function section(entry: CalculationEntry): string {
  const inputs = Object.entries(entry.inputs).map(([key, spec]) => {
    const unit = 'unit' in spec ? formatUnit(spec.unit) : '';
    return `| \`${inputName(key)}\` | ${cell(spec.label)} | ${unit} | ${cell(defaultOf(spec))} | ${cell(rangeOf(spec))} |`;
  });
  const outputs = Object.values(entry.outputs).map(
    (o) => `| ${cell(o.symbol)} | ${cell(o.label)} | ${formatUnit(o.unit)} |`,
  );
  return [
    `### ${entry.name}`,
    '',
    `${entry.title}.`,
    '',
    '| input | what | unit | default | range |',
    '| --- | --- | --- | --- | --- |',
    ...inputs,
    '',
    '| result | what | unit |',
    '| --- | --- | --- |',
    ...outputs,
    '',
    '```text',
    ...entry.equation,
    '```',
    '',
    `Holds for: ${entry.validity}`,
    '',
    `Source: ${entry.source}`,
    ...(entry.caution === undefined ? [] : ['', `**Caution:** ${entry.caution}`]),
    '',
  ].join('\n');
}

/** One chapter a subject, one section a calculation. */
export function calculationManual(
  subjects: readonly { readonly title: string; readonly calculations: readonly CalculationEntry[] }[],
): string {
  return [
    '# Calculations',
    '',
    'Made from `packages/engineering`; the test of that package fails when this page is old (`npx vitest run packages/engineering -u` writes it anew).',
    'Values take units: `coveline calc pipe-flow bore=2in flow=10m3/h temperature=80C`. The first result is the answer, the others are intermediate values.',
    '',
    ...subjects.flatMap(({ title, calculations }) => [`## ${title}`, '', ...calculations.map(section)]),
  ].join('\n');
}
