import { defineConfig } from 'vitest/config';

const DAY = 24 * 60 * 60 * 1000;

/**
 * Each of these runs in one browser a day, and in the other the next day: what they try is mostly not the browser's. With
 * `EVERY_LOOK=1` they run in both, as all others always do.
 */
const IN_TURN = [
  'thursday',
  'results',
  'team',
  'stored-pages',
  'lots-in-and-out',
  'first-rows',
  'demo-worked-on',
] as const;
const notToday = (browser: string): string[] =>
  process.env.EVERY_LOOK !== undefined
    ? []
    : IN_TURN.filter((_, at) => (at + Math.floor(Date.now() / DAY) + (browser === 'chromium' ? 0 : 1)) % 2 === 0).map(
        (name) => `tests/browser/${name}.test.ts`,
      );

/** `vitest run --root . --config tests/browser/vitest.config.ts` */
export default defineConfig({
  test: {
    projects: ['chromium', 'firefox'].map((name) => ({
      test: {
        name,
        include: ['tests/browser/**/*.test.ts'],
        exclude: notToday(name),
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
