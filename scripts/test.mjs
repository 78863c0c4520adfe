/** `npm test`: install, build, check, then unit, validation and browser tests. Closes with the sum of all of them. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { findBrowser } from './browser.mjs';
import { build, install, requireNode, root, run } from './tools.mjs';

requireNode();
install();
build();
run('node', ['scripts/check.mjs']);
const browser = findBrowser();

const out = `${root}.cache/test`;
rmSync(out, { recursive: true, force: true });
mkdirSync(out, { recursive: true });

const suites = [
  ['unit and validation', ['vitest', 'run']],
  ['browser', ['vitest', 'run', '--config', 'e2e/vitest.config.ts']],
];
let passed = 0;
let failed = 0;
let skipped = 0;
for (const [name, args] of suites) {
  console.log(`\n${name} tests`);
  const report = `${out}/${name.replaceAll(' ', '-')}.json`;
  const { status } = spawnSync(
    'npx',
    [...args, '--reporter=default', '--reporter=json', `--outputFile.json=${report}`],
    {
      stdio: 'inherit',
      cwd: root,
      env: { ...process.env, CHROMIUM_PATH: browser },
    },
  );
  try {
    const sums = JSON.parse(readFileSync(report, 'utf8'));
    passed += sums.numPassedTests;
    failed += sums.numFailedTests;
    skipped += sums.numPendingTests + sums.numTodoTests;
    // A suite that could not be loaded has no failed test of its own.
    if (status !== 0 && sums.numFailedTests === 0) failed += 1;
  } catch (error) {
    console.error(`The ${name} tests left no report: ${error.message}`);
    failed += 1;
  }
}
console.log(`\n${passed} passed, ${failed} failed, ${skipped} skipped`);
process.exit(failed === 0 ? 0 : 1);
