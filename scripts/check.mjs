/** Formatter, linter, types and layers. */
import { spawnSync } from 'node:child_process';

const steps = [
  ['npx', ['biome', 'ci', '.']],
  ['npm', ['run', '--silent', 'build:node']],
  ['node', ['scripts/layers.mjs']],
];
for (const [command, args] of steps) {
  const { status } = spawnSync(command, args, { stdio: 'inherit' });
  if (status !== 0) process.exit(status ?? 1);
}
