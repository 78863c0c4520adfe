/** What start and test share: install when needed, build, and run a step with its output shown. */
import { spawnSync } from 'node:child_process';
import { existsSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('..', import.meta.url));

/** Runs a command in the root of the repository; ends this process with its exit code when it fails. */
export function run(command, args, env = {}) {
  const { status, error } = spawnSync(command, args, {
    stdio: 'inherit',
    cwd: root,
    env: { ...process.env, ...env },
  });
  if (error) {
    console.error(`Could not start "${command}": ${error.message}`);
    process.exit(1);
  }
  if (status !== 0) process.exit(status ?? 1);
}

export function requireNode() {
  const major = Number(process.versions.node.split('.')[0]);
  if (major >= 20) return;
  console.error(`Coveline needs Node 20 or newer; this is ${process.version}.`);
  process.exit(1);
}

/** `npm ci` when node_modules is missing or older than the lock file. */
export function install() {
  const lock = `${root}package-lock.json`;
  const marker = `${root}node_modules/.package-lock.json`;
  if (existsSync(marker) && statSync(marker).mtimeMs >= statSync(lock).mtimeMs) return;
  console.log('Installing packages from the lock file …');
  run('npm', ['ci', '--no-audit', '--no-fund', '--loglevel=error']);
}

const demo = `${root}examples/porridge-doser/out/project/`;

/** Builds everything and, when its output is missing, generates the demo machine. */
export function build() {
  console.log('Building …');
  run('npm', ['run', '--silent', 'build']);
  if (!existsSync(`${demo}project.json`)) {
    console.log('Generating the demo machine (invented) …');
    run('npm', ['run', '--silent', 'generate', '--workspace', 'examples/porridge-doser']);
  }
  return demo;
}
