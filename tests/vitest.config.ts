import { defineConfig } from 'vitest/config';

/** Everything that runs in Node: `vitest run --root . --config tests/vitest.config.ts [path]`. */
export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    // These two have configurations of their own: one browser, or one time zone, a run.
    exclude: ['tests/browser/**', 'tests/zones/**', 'node_modules/**'],
    testTimeout: 60_000,
    hookTimeout: 60_000,
  },
});
