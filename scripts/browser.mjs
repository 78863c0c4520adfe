/**
 * The browser for the tests: CHROMIUM_PATH, one on PATH, or Debian's package where apt-get works.
 * Returns its path, or ends the process with a sentence that says what to do.
 */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];

function found() {
  if (process.env.CHROMIUM_PATH) return process.env.CHROMIUM_PATH;
  for (const dir of (process.env.PATH ?? '').split(delimiter)) {
    for (const name of names) if (existsSync(join(dir, name))) return join(dir, name);
  }
  return null;
}

export function findBrowser() {
  const there = found();
  if (there) return there;
  if (process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    console.log('No Chromium found: installing it from Debian’s packages …');
    const quiet = {
      stdio: ['ignore', 'ignore', 'inherit'],
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    };
    spawnSync('apt-get', ['update', '-q'], quiet);
    spawnSync(
      'apt-get',
      ['install', '-y', '-q', '--no-install-recommends', 'chromium', 'fonts-dejavu-core'],
      quiet,
    );
    const now = found();
    if (now) return now;
  }
  console.error(
    'The browser tests need Chromium, and none was found. Install it (Debian: "apt-get install chromium" as root) ' +
      'or set CHROMIUM_PATH to an existing one, then run the tests again.',
  );
  process.exit(1);
}
