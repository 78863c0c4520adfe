import { defineConfig } from 'vitest/config';

/** Unit and property tests beside the code, and `validation/`. Packages resolve to their sources. */
export default defineConfig({
  resolve: { conditions: ['source', 'module', 'import', 'default'] },
  // These reach Node's own resolver too: "import" among them would break packages that require each other (pg).
  ssr: { resolve: { conditions: ['source', 'node'] } },
  test: {
    globalSetup: './scripts/kernel.mjs',
    include: [
      'packages/*/src/**/*.test.ts',
      'apps/*/src/**/*.test.{ts,tsx}',
      'examples/*/src/**/*.test.ts',
      'validation/**/*.test.ts',
    ],
    testTimeout: 30_000,
  },
});
