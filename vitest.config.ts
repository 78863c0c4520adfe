import { defineConfig } from 'vitest/config';

/** Unit and property tests beside the code, and `validation/`. Packages resolve to their sources. */
export default defineConfig({
  resolve: { conditions: ['source', 'module', 'import', 'default'] },
  ssr: { resolve: { conditions: ['source', 'node', 'module', 'import', 'default'] } },
  test: {
    include: [
      'packages/*/src/**/*.test.ts',
      'apps/*/src/**/*.test.{ts,tsx}',
      'examples/*/src/**/*.test.ts',
      'validation/**/*.test.ts',
    ],
    testTimeout: 30_000,
  },
});
