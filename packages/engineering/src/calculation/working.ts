import { formatQuantity, type Working, type WorkingValue } from '@coveline/quantity';
import type { Definition, Outputs } from './calculation.ts';
import { type Inputs, type InputValue, inputName } from './inputs.ts';

/** How many values of a list the working prints. */
const listed = 12;

/** Put the description of a calculation and its numbers together. */
export function writeWorking(
  definition: Omit<Definition<Inputs, Outputs>, 'compute'>,
  values: Readonly<Record<string, InputValue>>,
  given: Readonly<Record<string, InputValue | undefined>>,
  origins: Readonly<Record<string, string | undefined>>,
  numbers: Readonly<Record<string, number>>,
  warnings: readonly string[],
): Working {
  const inputs: WorkingValue[] = [];
  const choices: string[] = [];
  for (const [key, spec] of Object.entries(definition.inputs)) {
    const value = values[key];
    const preset = 'from' in spec && spec.from !== undefined ? `default, ${spec.from}` : 'default';
    const from = origins[key] ?? (given[key] === undefined ? preset : 'given');
    if (spec.kind === 'number')
      inputs.push({ symbol: spec.symbol, name: spec.label, value: value as number, unit: spec.unit, from });
    else if (spec.kind === 'list') {
      const numbersOf = value as readonly number[];
      const head = numbersOf.slice(0, listed).map((v) => formatQuantity(v, '1', { digits: 6 }));
      if (numbersOf.length > listed) head.push('…');
      inputs.push({
        symbol: spec.symbol,
        name: `${spec.label}, number of values`,
        value: numbersOf.length,
        unit: '1',
        text: `${head.join('; ')}${spec.unit === '1' ? '' : ` ${spec.unit}`}`,
        from,
      });
    } else if (spec.kind === 'text') {
      const content = (value as string).trim();
      const first = content.split('\n', 1)[0].slice(0, 60);
      inputs.push({
        symbol: inputName(key),
        name: `${spec.label}, number of characters`,
        value: content.length,
        unit: '1',
        text: first.length < content.length ? `${first} …` : first,
        from,
      });
    } else if (spec.kind === 'choice') choices.push(`${spec.label}: ${spec.choices[value as string]}`);
  }
  const steps = Object.entries(definition.outputs).map(([key, output]) => ({
    symbol: output.symbol,
    name: output.label,
    value: numbers[key],
    unit: output.unit,
    ...(output.words === undefined ? {} : { text: output.words[numbers[key]] }),
  }));
  const [result, ...others] = steps;
  return {
    title: definition.title,
    inputs,
    formula: [...choices, ...definition.equation],
    steps: others,
    result,
    source: definition.source,
    validity: definition.validity,
    warnings,
  };
}
