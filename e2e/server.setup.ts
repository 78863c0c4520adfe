/**
 * Starts the real server on an empty data folder with the demo machine, and stops it after the tests. With
 * COVELINE_E2E_URL the tests use a server that runs already and holds the demo machine.
 */
import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { MachineSummary } from '@coveline/api';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  export interface ProvidedContext {
    /** Address of the server, and of the demo machine in it. */
    url: string;
    machine: string;
  }
}

const root = fileURLToPath(new URL('..', import.meta.url));
const demo = join(root, 'examples/porridge-doser/out/project');

/** Reading and measuring both revisions takes this long on a machine that is busy with other work. */
const patience_ms = 900_000;

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  mkdirSync(join(root, 'e2e/out'), { recursive: true });
  const running = process.env.COVELINE_E2E_URL;
  if (running) {
    project.provide('url', running);
    project.provide('machine', await surveyed(running));
    return async () => undefined;
  }
  for (const [path, command] of [
    [join(root, 'apps/web/dist/index.html'), 'npm run build'],
    [join(demo, 'project.json'), 'npm run generate --workspace examples/porridge-doser'],
  ])
    if (!existsSync(path)) throw new Error(`The browser tests need ${path}. Run "${command}" first.`);

  const data = mkdtempSync(join(tmpdir(), 'coveline-e2e-'));
  const args = ['apps/cli/bin/coveline.mjs', 'serve', '--port', '0', '--data', data, '--demo', demo];
  const server = spawn(process.execPath, args, { cwd: root, stdio: ['ignore', 'pipe', 'inherit'] });
  const ended = new Promise<void>((resolve) => server.once('exit', () => resolve()));
  const url = await new Promise<string>((resolve, reject) => {
    let said = '';
    server.stdout.on('data', (chunk: Buffer) => {
      said += chunk.toString();
      const found = /https?:\/\/\S+/.exec(said);
      if (found) resolve(found[0]);
    });
    server.once('exit', (code) => reject(new Error(`The server ended at once (${code}): ${said}`)));
  });
  const stop = async () => {
    server.kill('SIGTERM');
    await ended;
    rmSync(data, { recursive: true, force: true });
  };
  try {
    project.provide('url', url);
    project.provide('machine', await surveyed(url));
  } catch (error) {
    await stop();
    throw error;
  }
  return stop;
}

/** Waits until every revision of the demo machine is surveyed. */
async function surveyed(url: string): Promise<string> {
  for (const end = Date.now() + patience_ms; Date.now() < end; await new Promise((r) => setTimeout(r, 500))) {
    const machines = (await (await fetch(`${url}/api/machines`)).json()) as MachineSummary[];
    const machine = machines.find((m) => m.invented);
    if (machine?.revisions.every((r) => r.surveyedAt !== null)) return machine.id;
  }
  throw new Error(`The demo machine was not surveyed within ${patience_ms / 1000} s.`);
}
