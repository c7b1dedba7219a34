import { defineConfig } from 'vitest/config';

/** The tests that are to notice what `npm run mutants` changes in the core: without screens, stores and browsers. */
export default defineConfig({
  test: {
    include: ['domain', 'folds', 'journal', 'reference'].map((room) => `tests/${room}/**/*.test.ts`),
    // Needs programs that are installed beside, and takes longer than the rest of its room.
    exclude: ['tests/reference/journal-tools.test.ts', 'node_modules/**'],
    testTimeout: 60_000,
    pool: 'threads',
    isolate: false,
  },
});
