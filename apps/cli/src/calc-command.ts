import { readFile } from 'node:fs/promises';
import {
  type CalculationEntry,
  calculations,
  findCalculation,
  inputName,
  resultText,
  runFromText,
} from '@coveline/engineering';
import { Command } from 'commander';
import { calculationHelp, calculationList } from './calc-text.ts';
import { UsageError } from './failure.ts';
import { print, writeJson } from './output.ts';

interface CalcOptions {
  readonly json?: string;
  readonly locale?: string;
  readonly help?: boolean;
}

export function calcCommand(): Command {
  return new Command('calc')
    .summary('one engineering calculation, with its working')
    .description('Runs a calculation by name. Without a name it lists all of them.')
    .argument('[name]', 'name of the calculation')
    .argument('[values...]', 'key=value with units, such as diameter=2in temperature=80C')
    .option('--json <file>', 'write result and working as JSON; - for standard output')
    .option('--locale <tag>', 'how numbers are written in the values, such as de for 1,5')
    .helpOption(false)
    .option('-h, --help', 'what the calculation needs, its equation, range and source')
    .action(async (name: string | undefined, values: string[], o: CalcOptions, command: Command) => {
      if (name === undefined) return print(o.help ? command.helpInformation() : calculationList());
      const entry = findCalculation(name) ?? unknown(name);
      if (o.help) return print(calculationHelp(entry));
      const texts = await readTexts(entry, values);
      const { outcome, understood } = runFromText(entry, texts, o.locale ? { locale: o.locale } : {});
      if (outcome.kind === 'refused') throw new UsageError(`${name}: ${outcome.reason}.`);
      if (o.json !== undefined) {
        await writeJson(o.json, { schema: 'coveline.calc/1', name, understood, ...outcome });
      }
      if (o.json !== '-') await print(resultText(outcome, understood));
    });
}

function unknown(name: string): never {
  const near = calculations.filter((c) => c.name.includes(name) || name.includes(c.name)).map((c) => c.name);
  const hint = near.length > 0 ? `Did you mean ${near.join(' or ')}?` : '"coveline calc" lists all of them.';
  throw new UsageError(`There is no calculation "${name}". ${hint}`);
}

/** "key=value" pairs; "@file" behind a text input reads the file. */
async function readTexts(
  entry: CalculationEntry,
  values: readonly string[],
): Promise<Record<string, string>> {
  const texts: Record<string, string> = {};
  for (const pair of values) {
    const at = pair.indexOf('=');
    if (at < 1) throw new UsageError(`"${pair}" is not of the form key=value.`);
    const key = pair.slice(0, at);
    const value = pair.slice(at + 1);
    const input = Object.entries(entry.inputs).find(([name]) => name === key || inputName(name) === key)?.[1];
    texts[key] = input?.kind === 'text' && value.startsWith('@') ? await readText(value.slice(1)) : value;
  }
  return texts;
}

async function readText(path: string): Promise<string> {
  try {
    return await readFile(path, 'utf8');
  } catch (error) {
    throw new UsageError(
      `Could not read "${path}": ${(error as NodeJS.ErrnoException).code ?? 'unknown error'}.`,
    );
  }
}
