import { Command } from 'commander';
export function reviewCommand(): Command {
  return new Command('review');
}
