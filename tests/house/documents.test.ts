import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { sourceFiles } from './source-files.ts';

const beside = sourceFiles(['src', 'options-page', 'tests'], ['README.md']).map((file) => file.path);
const documents = ['README.md', 'DEVELOPERS.md', ...beside].map((file) => ({
  path: file,
  text: readFileSync(file, 'utf8'),
}));

/** Files and folders that a text names in code marks: "src/acts/", "`tests/x.test.ts`", "`screens-for-*.ts`" with its folder. */
function namedFiles(text: string): readonly string[] {
  return [...text.matchAll(/`([^`\s]+)`/g)]
    .map(([, name = '']) => name)
    .filter((name) => /^(?:src|options-page|tests|scripts|manifest)\/[\w./*-]+$/.test(name));
}

/** A name with a star stands for at least one file of its folder. */
function isThere(name: string): boolean {
  const [before = '', after] = path.basename(name).split('*');
  if (after === undefined) return existsSync(name);
  return readdirSync(path.dirname(name)).some((file) => file.startsWith(before) && file.endsWith(after));
}

describe.each(documents)('$path', ({ path: document, text }) => {
  test('names only files that are there', () => {
    expect(namedFiles(text).filter((name) => !isThere(name))).toEqual([]);
  });

  test('links only to files that are there', () => {
    const links = [...text.matchAll(/\]\(([^)#:]+)(?:#[^)]*)?\)/g)].map(([, link = '']) => link);
    expect(links.filter((link) => !existsSync(path.join(path.dirname(document), link)))).toEqual([]);
  });
});

test('a file that is not there would be seen', () => {
  expect(namedFiles('see `src/gone.ts`, `npm test`, `options-page/shell/screens-for-*.ts`').map(isThere)).toEqual([
    false,
    true,
  ]);
});
