import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const shared = {
  // No test is about time: this only ends one that hangs, also on a machine with much else to do.
  testTimeout: 150_000,
  hookTimeout: 150_000,
  alias: { 'webextension-polyfill': fileURLToPath(new URL('invented-extension-api.ts', import.meta.url)) },
};
/** Rooms whose tests leave nothing behind them: one thread loads what they import once, for all. */
const SHARED_ROOMS = [
  'acts',
  'background',
  'capture',
  'demo',
  'domain',
  'folds',
  'house',
  'intake',
  'journal',
  'messages',
  'reading',
  'reference',
  'scripts',
  'store',
  'team',
  'views',
].map((room) => `tests/${room}/**`);

/** Rooms of screens, of which the same is true: each file gets a document of its own, and what they import is loaded once. */
const SCREENS = ['doors', 'options-page', 'ui'].map((room) => `tests/${room}/**`);

/** Everything that runs in Node: `vitest run --config tests/vitest.config.ts --root . [path]`. */
export default defineConfig({
  test: {
    projects: [
      {
        test: {
          ...shared,
          name: 'rooms',
          include: SHARED_ROOMS.map((room) => `${room}/*.test.ts`),
          pool: 'threads',
          isolate: false,
        },
      },
      {
        test: {
          ...shared,
          name: 'screens',
          include: SCREENS.map((room) => `${room}/*.test.{ts,tsx}`),
          pool: 'threads',
          isolate: false,
        },
      },
      {
        test: {
          ...shared,
          name: 'apart',
          include: ['tests/**/*.test.{ts,tsx}'],
          // Two of these have configurations of their own: one browser, or one time zone, a run.
          exclude: ['tests/browser/**', 'tests/zones/**', 'node_modules/**', ...SHARED_ROOMS, ...SCREENS],
          pool: 'threads',
        },
      },
    ],
    maxWorkers: 2,
  },
});
