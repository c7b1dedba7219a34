import { createHash } from 'node:crypto';
import { expect, test } from 'vitest';
import { sourceFiles } from './source-files.ts';

/**
 * Names of models and trims that belong to somebody, and one that begins like a real sale's: the beginnings of their SHA-256, in
 * small letters, so that this file does not name them either.
 */
const OTHERS: ReadonlySet<string> = new Set([
  'deaea0dc2cd97147',
  '643e08ff11d8ddef',
  'fe9cc099f5c02135',
  'dbc4a04327176e65',
  '2dae946ece4887f3',
  'b01c69fcde0e1fc9',
  '5059e63327e13a35',
  'b9fba08ee529cff7',
  '20d1a141586e97cc',
  '4d3f71683505542f',
  'e974c794f70048cf',
  'e9a3c092b8ffeeea',
  'ef35ee2fbf0b1463',
  '53008a4021d50189',
]);

const mark = (word: string) => createHash('sha256').update(word).digest('hex').slice(0, 16);

test('no example bears a name that belongs to somebody', () => {
  const files = sourceFiles(
    ['src', 'options-page', 'tests', 'scripts', 'manifest'],
    ['.ts', '.tsx', '.mjs', '.md', '.json', '.csv', '.html'],
  );
  const places = new Map<string, string>();
  for (const { path, text } of files) {
    for (const word of text.toLowerCase().match(/[a-z][a-z0-9]+/g) ?? []) if (!places.has(word)) places.set(word, path);
  }
  expect(places.size).toBeGreaterThan(5_000);
  expect([...places].filter(([word]) => OTHERS.has(mark(word))).map(([, path]) => path)).toEqual([]);
});
