import { describe, expect, test } from 'vitest';
import { sourceFiles } from './source-files.ts';

const MOST_LINES = 300;
/** Names that say nothing about what is inside. */
const EMPTY_NAMES = /^(?:utils?|helpers?|common|misc|shared|index|types|constants)\./;

const files = sourceFiles(
  ['src', 'options-page', 'manifest', 'scripts', 'tests'],
  ['.ts', '.tsx', '.mjs', '.mts', '.css', '.html'],
);

describe('every file', () => {
  test(`has at most ${MOST_LINES} lines`, () => {
    const long = files.map((file) => ({ path: file.path, lines: file.text.split('\n').length - 1 }));
    expect(long.filter(({ lines }) => lines > MOST_LINES)).toEqual([]);
  });

  test('has a name in lower case with hyphens', () => {
    const name = (path: string) => path.split('/').at(-1) ?? '';
    expect(
      files.map((file) => file.path).filter((path) => !/^[a-z0-9]+(?:-[a-z0-9]+)*(?:\.[a-z]+)+$/.test(name(path))),
    ).toEqual([]);
  });

  test('is named for what is in it', () => {
    const empty = files.map((file) => file.path).filter((path) => EMPTY_NAMES.test(path.split('/').at(-1) ?? ''));
    expect(empty.filter((path) => path !== 'options-page/index.html')).toEqual([]);
  });
});

test('every folder is named in lower case with hyphens, and not for nothing', () => {
  const folders = new Set(files.flatMap((file) => file.path.split('/').slice(0, -1)));
  const wrong = [...folders].filter(
    (folder) => !/^[a-z0-9]+(?:-[a-z0-9]+)*$/.test(folder) || EMPTY_NAMES.test(`${folder}.`),
  );
  expect(wrong).toEqual([]);
});
