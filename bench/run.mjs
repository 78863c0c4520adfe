/**
 * Every benchmark, one process each, one after the other; ends with 1 when one of them fails. Needs
 * `npm run build:node` first.
 *
 *   node bench/run.mjs [--smoke]
 *
 * With --smoke on small models, to see that they run: the figures then say nothing.
 */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const smoke = process.argv.includes('--smoke');
const benches = [
  ['engineering.mjs', []],
  ['rays.mjs', ['20000']],
  ['survey-surfaces.mjs', ['20000']],
  ['survey-gaps.mjs', ['plates']],
  ['survey-liquid.mjs', ['20000']],
  ['survey-around.mjs', ['20000']],
  ['survey-reach.mjs', ['20000', '--cell', '40']],
];

let failed = 0;
for (const [name, small] of benches) {
  console.log(`\n== ${name}`);
  const script = fileURLToPath(new URL(name, import.meta.url));
  const { status } = spawnSync(process.execPath, [script, ...(smoke ? small : [])], { stdio: 'inherit' });
  if (status !== 0) {
    failed++;
    console.error(`${name} failed.`);
  }
}
process.exit(failed === 0 ? 0 : 1);
