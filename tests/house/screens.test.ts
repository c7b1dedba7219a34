import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readRoute } from '../../options-page/shell/route.ts';
import { screenTitle } from '../../options-page/shell/screen-title.ts';
import { addressOf, SCREEN_ROWS } from '../../options-page/shell/screens.ts';
import { demoScreens } from '../../scripts/demo-screens.ts';
import { screenVisits } from '../../scripts/screen-visits.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { sourceFiles } from './source-files.ts';

const NOW = instant(Date.UTC(2026, 10, 25, 18));
const ADDRESSES = SCREEN_ROWS.flatMap(([screen, { parts = [{ part: '', label: '' }] }]) =>
  parts.map(({ part, label }) => ({ screen, label, hash: addressOf(screen, part.replace(':date', '2026-11-28')) })),
);

test('each row of the table of screens is an address that opens its screen, under its own title', () => {
  expect(ADDRESSES.length).toBeGreaterThan(40);
  const opened = ADDRESSES.map(({ hash }) => readRoute(hash));
  // What leads nowhere has no address of its own.
  expect(opened.map(({ screen }) => screen)).toEqual(ADDRESSES.map(({ screen }) => screen));
  const titles = opened.map((route) => screenTitle(route));
  for (const [at, { label }] of ADDRESSES.entries()) expect(titles[at]).toContain(label);
  expect(titles).toContain('Books: Payables');
  expect(titles).toContain('Books: Folder');
  expect(titles).toContain('Week: Day');
});

test('a part that a screen draws is a row of the table', () => {
  // Setup’s parts are a type, from which its screen and the table both follow.
  const drawn = (file: string) =>
    [...readFileSync(file, 'utf8').matchAll(/(?:case |part === )'([a-z]+)'/g)].map(([, part = '']) => part);
  for (const [screen, file] of [
    ['books', 'options-page/books/books-screen.tsx'],
    ['learn', 'options-page/learn/learn-screen.tsx'],
    ['results', 'options-page/results/results-screen.tsx'],
  ] as const) {
    const rows = SCREEN_ROWS.find(([name]) => name === screen)?.[1].parts?.map(({ part }) => part) ?? [];
    expect(drawn(file).length, file).toBeGreaterThan(0);
    for (const part of drawn(file)) expect(rows, `${file} draws "${part}"`).toContain(part);
  }
});

test('every screen and every part of one is visited by the tests and has its picture taken', () => {
  const visited = screenVisits(NOW);
  // All but the demo’s loading, which is over before anybody could look.
  expect(visited.length).toBe(ADDRESSES.length - 1);
  expect(new Set(visited.map(({ name }) => name)).size).toBe(visited.length);
  const pictured = demoScreens(NOW).map(({ name }) => name);
  expect(visited.filter(({ name }) => !pictured.includes(name))).toEqual([]);
});

test('what goes through all screens asks the table which they are', () => {
  const asks = (file: string) => /\b(?:screenVisits|demoScreens)\(/.test(readFileSync(file, 'utf8'));
  expect(['tests/browser/on-the-demo/accessible.ts', 'scripts/take-pictures.ts'].filter((file) => !asks(file))).toEqual(
    [],
  );
  // A list of many addresses anywhere else would be one in which a new screen is forgotten.
  const lists = sourceFiles(['tests/browser', 'scripts'], ['.ts']).filter(
    ({ path, text }) => !path.endsWith('screen-visits.ts') && new Set(text.match(/'#\/[a-z-]+'/g)).size > 8,
  );
  expect(lists.map(({ path }) => path)).toEqual([]);
});
