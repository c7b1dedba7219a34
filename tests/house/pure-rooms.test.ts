import { describe, expect, test } from 'vitest';
import { importsOf, packageName } from './imports.ts';
import { PURE_PACKAGES } from './rooms.ts';
import { codeAlone, sourceFiles } from './source-files.ts';

/** What makes a result depend on when, where or by luck it is worked out. */
const IMPURE = [
  {
    what: 'the clock',
    pattern: /\bDate\.now\b|\bnew Date\(\s*\)|(?<!new )\bDate\(\)|\bperformance\.now\b|\bTemporal\.Now\b/,
  },
  { what: 'chance', pattern: /\bMath\.random\b|\bcrypto\.(?:randomUUID|getRandomValues)\b/ },
  {
    what: "the computer's own zone or language",
    pattern: /\.getTimezoneOffset\b|\btoLocale(?:Date|Time)?String\(\s*\)|\bresolvedOptions\(\)\.timeZone\b/,
  },
  { what: 'the browser', pattern: /\b(?:document|window|navigator|localStorage|indexedDB|fetch)\s*[.(]/ },
] as const;

describe.each(Object.keys(PURE_PACKAGES) as (keyof typeof PURE_PACKAGES)[])('%s', (room) => {
  const files = sourceFiles([room], ['.ts', '.tsx']);

  test('uses only packages that compute', () => {
    const allowed: readonly string[] = PURE_PACKAGES[room];
    const used = files.flatMap((file) =>
      importsOf(file)
        .filter((target) => !target.startsWith('src/') && !allowed.includes(packageName(target)))
        .map((target) => `${file.path} imports ${target}`),
    );
    expect(used).toEqual([]);
  });

  test.each(IMPURE)('does not ask for $what', ({ pattern }) => {
    expect(files.filter((file) => pattern.test(codeAlone(file.text))).map((file) => file.path)).toEqual([]);
  });

  test('has files to check', () => {
    expect(files.length).toBeGreaterThan(0);
  });
});

test.each([
  ['the clock', 'const now = Date.now();'],
  ['the clock', 'const now = new Date();'],
  ['chance', 'const id = Math.random();'],
  ["the computer's own zone or language", 'const text = date.toLocaleDateString();'],
  ['the browser', 'document.title'],
])('a use of %s would be seen in: %s', (what, code) => {
  expect(IMPURE.filter(({ pattern }) => pattern.test(code)).map((rule) => rule.what)).toEqual([what]);
});

test('a date made of an instant is no use of the clock', () => {
  expect(IMPURE.some(({ pattern }) => pattern.test('const day = new Date(instant);'))).toBe(false);
});

test('the WebExtension interface is called in src/browser only, and there through webextension-polyfill', () => {
  const call = /\b(?:chrome|browser)\??\.[a-z]\w*/;
  const callers = sourceFiles(['src', 'options-page'], ['.ts', '.tsx'])
    .filter((file) => call.test(codeAlone(file.text)))
    .map((file) => file.path)
    .filter((path) => !path.startsWith('src/browser/'));
  expect(callers).toEqual([]);
  const program = sourceFiles(['src', 'options-page', 'manifest'], ['.ts', '.tsx']);
  const ofPolyfill = program
    .filter((file) => importsOf(file).includes('webextension-polyfill'))
    .map(({ path }) => path);
  expect(ofPolyfill.filter((path) => !path.startsWith('src/browser/'))).toEqual([]);
  const own = sourceFiles(['src/browser'], ['.ts']).filter((file) => call.test(codeAlone(file.text)));
  expect(own.map(({ path }) => path).filter((path) => !ofPolyfill.includes(path))).toEqual([]);
  expect(own.filter((file) => /\bchrome\./.test(codeAlone(file.text))).map(({ path }) => path)).toEqual([]);
  expect(call.test('await chrome.alarms.clear(name)')).toBe(true);
});
