import { defineConfig } from 'vitest/config';

/** Every browser test runs in both browsers: `vitest run --root . --config tests/browser/vitest.config.ts`. */
export default defineConfig({
  test: {
    projects: ['chromium', 'firefox'].map((name) => ({
      test: {
        name,
        include: ['tests/browser/**/*.test.ts'],
        globalSetup: ['tests/browser/drivers/global-setup.ts'],
        testTimeout: 150_000,
        hookTimeout: 120_000,
        // The browsers are what keeps files apart; loading their drivers anew for each file would only take time.
        isolate: false,
      },
    })),
    maxWorkers: 2,
  },
});
