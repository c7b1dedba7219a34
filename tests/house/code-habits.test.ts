import { describe, expect, test } from 'vitest';
import { codeAlone, sourceFiles } from './source-files.ts';

const program = sourceFiles(['src', 'options-page', 'manifest', 'scripts', 'tests'], ['.ts', '.tsx', '.mjs', '.mts']);

/** Put together from pieces, so that this file does not break its own rules. */
const rule = (...pieces: readonly string[]) => new RegExp(pieces.join(''), 'm');

/** What nobody writes, in code or in comments. The linter sees most of it; this sees also what silences the linter. */
const NEVER = [
  { what: 'an error of the type checker told to be quiet', pattern: rule('@ts', '-(?:ignore|expect-error|nocheck)') },
  {
    what: 'a test that does not run',
    pattern: rule('\\b(?:test|it|describe)(?:\\.\\w+)*\\.(?:sk', 'ip|on', 'ly|to', 'do|fa', 'ils|run', 'If)'),
  },
  { what: 'work left for later', pattern: rule('\\b(?:TO', 'DO|FIX', 'ME|X', 'XX|HA', 'CK)\\b') },
  { what: 'a silenced linter without a reason', pattern: rule('biome', '-ignore\\S*\\s+\\S+?:?\\s*$') },
  { what: 'a whole file the linter skips', pattern: rule('biome', '-ignore-all') },
] as const;

/** What is not written in code; in prose the words are free. */
const NEVER_IN_CODE = [
  { what: 'the type that allows everything', pattern: rule('(?::|\\bas|<)\\s*an', 'y\\b(?!\\s*[.(])') },
  { what: 'a value sworn to be there', pattern: rule('[\\w)\\]]', '!(?:\\.|\\[|;|,|\\))') },
  { what: 'an empty catch', pattern: rule('catch\\s*(?:\\(\\w+\\)\\s*)?\\{', '\\}') },
] as const;

/** Where the lengths of time are. */
const UNITS = 'src/domain/time/units.ts';

/** What is not written in what the user gets. */
const NEVER_SHIPPED = [
  { what: 'all of zod at once', pattern: rule("from 'zo", "d'") },
  {
    what: 'a length of time that has a name',
    pattern: rule('\\b(?:3_?600_', '?000|86_?400_', '?000|24 \\* ', '60)\\b|const (?:SECOND|MINUTE|HOUR|DAY) ', '= '),
  },
  { what: 'markup made of a string', pattern: rule('dangerouslySet', 'InnerHTML|\\.inner', 'HTML\\s*=[^=]') },
] as const;

describe('nowhere is there', () => {
  test.each(NEVER)('$what', ({ pattern }) => {
    expect(program.filter((file) => pattern.test(file.text)).map((file) => file.path)).toEqual([]);
  });

  test.each(NEVER_IN_CODE)('$what', ({ pattern }) => {
    expect(program.filter((file) => pattern.test(codeAlone(file.text))).map((file) => file.path)).toEqual([]);
  });

  test.each(NEVER_SHIPPED)('$what', ({ pattern }) => {
    const shipped = program.filter((file) => /^(?:src|options-page)\//.test(file.path) && file.path !== UNITS);
    expect(shipped.filter((file) => pattern.test(file.text)).map((file) => file.path)).toEqual([]);
  });
});

test.each([
  ['an error of the type checker told to be quiet', '// @ts', '-ignore'],
  ['a test that does not run', 'test.sk', "ip('x', () => {});"],
  ['work left for later', '// TO', 'DO: mend'],
  ['a silenced linter without a reason', '// biome', '-ignore lint/style/useConst'],
  ['a whole file the linter skips', '/* biome', '-ignore-all lint: because */'],
  ['the type that allows everything', 'const a: an', 'y = 1;'],
  ['the type that allows everything', 'x as an', 'y'],
  ['a value sworn to be there', 'found', '!.name'],
  ['an empty catch', 'try { x(); } catch {', '}'],
  ['all of zod at once', "import { z } from 'zo", "d';"],
  ['a length of time that has a name', 'const DAY ', '= 24;'],
  ['a length of time that has a name', 'now + 3_600_', '000'],
  ['markup made of a string', 'element.inner', 'HTML = text'],
])('%s would be seen in: %s%s', (what, ...pieces) => {
  const seen = [...NEVER, ...NEVER_IN_CODE, ...NEVER_SHIPPED].filter(({ pattern }) => pattern.test(pieces.join('')));
  expect(seen.map((one) => one.what)).toEqual([what]);
});
