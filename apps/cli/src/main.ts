/** The `coveline` command. Results go to standard output, everything else to standard error. */
import { Command, CommanderError } from 'commander';
import { calcCommand } from './calc-command.ts';
import { exitCodes, report } from './failure.ts';
import { reviewCommand } from './review-command.ts';
import { serveCommand } from './serve-command.ts';
import { surveyCommand } from './survey-command.ts';

const program = new Command('coveline')
  .description('Coveline, a workbench for the hygienic design of food machines.')
  .version('0.1.0')
  .addCommand(surveyCommand())
  .addCommand(reviewCommand())
  .addCommand(calcCommand())
  .addCommand(serveCommand())
  .showHelpAfterError('(coveline --help teaches the commands)');

for (const command of [program, ...program.commands]) command.exitOverride();

try {
  await program.parseAsync();
} catch (error) {
  if (error instanceof CommanderError) {
    process.exitCode = error.exitCode === 0 ? exitCodes.done : exitCodes.usage;
  } else {
    process.exitCode = report(error, (line) => process.stderr.write(`${line}\n`));
  }
}
