import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';

const ROOMS = ['domain', 'folds', 'journal', 'reference'];

/**
 * The tests that are to notice a change of these files: those in the folder that mirrors a file's, and those elsewhere in the
 * rooms of the core that import the file itself.
 * @param files paths such as `src/domain/money/rounding.ts`
 */
export function testsFor(files: readonly string[]): readonly string[] {
  const tests = ROOMS.flatMap((room) =>
    readdirSync(`tests/${room}`, { recursive: true, encoding: 'utf8' })
      .filter((file) => file.endsWith('.test.ts'))
      .map((file) => path.join('tests', room, file)),
  );
  const folders = new Set(files.map(mirrored));
  const wanted = new Set(files);
  return tests.filter((test) => folders.has(path.dirname(test)) || importsOf(test).some((file) => wanted.has(file)));
}

/** The nearest folder of tests: `tests/domain/money` for `src/domain/money/rounding.ts`. */
function mirrored(file: string): string {
  let folder = path.dirname(file).replace(/^src/, 'tests');
  while (!existsSync(folder)) folder = path.dirname(folder);
  return folder;
}

function importsOf(test: string): readonly string[] {
  const found = readFileSync(test, 'utf8').matchAll(/from '(\.[^']+)'/g);
  return [...found].map(([, from = '']) => path.join(path.dirname(test), from));
}
