import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { ALLOWED, GONE_WORDS, isAllowed } from './gone-words.ts';
import { saidStrings } from './said-strings.ts';
import { sourceFiles } from './source-files.ts';

const besideRooms = sourceFiles(['src', 'options-page', 'tests'], ['README.md']).map(({ path }) => path);
const documents = ['README.md', 'DEVELOPERS.md', 'manifest/setup.schema.json', ...besideRooms].flatMap((path) =>
  readFileSync(path, 'utf8')
    .split('\n')
    .map((text) => ({ path, text: text.trim() })),
);
const said = [...saidStrings(['src', 'options-page', 'scripts', 'manifest']), ...documents];

test.each(GONE_WORDS)('nobody says $found: say $say', ({ pattern }) => {
  const lines = said.filter(({ path, text }) => pattern.test(text) && !isAllowed(path, text));
  expect(lines.map(({ path, text }) => `${path}: ${text.slice(0, 160)}`)).toEqual([]);
});

test.each(GONE_WORDS)('a text that says $found would be seen', ({ pattern, found }) => {
  expect(found).toMatch(pattern);
});

test('every text that may stay is still there, and would be found', () => {
  const idle = ALLOWED.filter(
    (each) =>
      !said.some(
        ({ path, text }) =>
          path === each.path && text.startsWith(each.begins) && GONE_WORDS.some(({ pattern }) => pattern.test(text)),
      ),
  );
  expect(idle).toEqual([]);
});
