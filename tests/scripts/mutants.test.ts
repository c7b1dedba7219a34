import { expect, test } from 'vitest';
import { listMutants, type Mutant } from '../../scripts/mutants/list-mutants.ts';
import { pickPlaces, rangeOf } from '../../scripts/mutants/pick-places.ts';
import { sayMutants, scoreOf, type Tried } from '../../scripts/mutants/say-mutants.ts';
import { testsFor } from '../../scripts/mutants/tests-for.ts';

const FILES = ['src/domain/money/rounding.ts', 'src/journal/verify-chain.ts'];

const overlap = (a: Mutant, b: Mutant) =>
  a.file === b.file &&
  (a.start.line < b.end.line || (a.start.line === b.end.line && a.start.column < b.end.column)) &&
  (b.start.line < a.end.line || (b.start.line === a.end.line && b.start.column < a.end.column));

test('a seed draws the same places each time, at least so many mutants, and no place twice', async () => {
  const mutants = await listMutants(FILES);
  const places = pickPlaces(mutants, 20, 7);
  expect(pickPlaces(mutants, 20, 7)).toEqual(places);
  expect(pickPlaces(mutants, 20, 8)).not.toEqual(places);
  const sum = places.reduce((all, place) => all + place.mutants, 0);
  expect(sum).toBeGreaterThanOrEqual(20);
  expect(sum).toBeLessThan(24);
  expect(places.filter((one, at) => places.slice(at + 1).some((other) => overlap(one, other)))).toEqual([]);
  // What is found whatever happens: the body of a function emptied with all that is in it.
  expect(Math.max(...places.map((place) => place.mutants))).toBeLessThanOrEqual(4);
  for (const place of places) expect(rangeOf(place)).toMatch(/^src\/.*\.ts:[1-9]\d*:\d+-[1-9]\d*:\d+$/);
});

test('the tests that are to notice a change are those beside its folder and those that import the file', () => {
  const tests = testsFor(['src/journal/verify-chain.ts']);
  expect(tests).toContain('tests/journal/verify-chain.test.ts');
  expect(tests.filter((file) => file.startsWith('tests/domain/'))).toEqual([]);
});

test('the score counts what could be run, and each survivor is told with its place and the change', () => {
  const one: Tried = {
    file: 'src/domain/money/rounding.ts',
    line: 43,
    column: 20,
    was: 'a / b',
    is: 'a * b',
    outcome: 'killed',
  };
  const tried: readonly Tried[] = [
    one,
    { ...one, outcome: 'neither' },
    { ...one, file: 'src/journal/entry-hash.ts', outcome: 'survived' },
    { ...one, file: 'src/journal/entry-hash.ts', line: 9 },
  ];
  expect(scoreOf(tried)).toBeCloseTo(2 / 3);
  expect(scoreOf([{ ...one, outcome: 'neither' }])).toBeNull();
  const said = sayMutants(tried);
  expect(said).toMatch(/src\/domain\/money +100% {2}1 killed, 0 survived, 1 not run/);
  expect(said).toContain('src/journal/entry-hash.ts:43:20\n    was a / b\n    is  a * b');
  expect(said).not.toContain('rounding.ts:43');
});
