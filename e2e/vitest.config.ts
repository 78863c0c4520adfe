import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** Browser tests: what a person does, on the real server with the demo machine. One file after the other. */
export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    include: ['e2e/**/*.test.ts'],
    globalSetup: ['e2e/server.setup.ts'],
    fileParallelism: false,
    testTimeout: 300_000,
    hookTimeout: 300_000,
  },
});
