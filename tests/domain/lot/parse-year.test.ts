import { describe, expect, it } from 'vitest';
import { parseYear } from '../../../src/domain/lot/parse-year.ts';

const read = (text: string, thisYear = 2026) => {
  const year = parseYear(text, thisYear);
  return year.ok ? year.value : year.reason;
};

describe('a model year', () => {
  it.each([
    ['2021', 2021],
    ["'21", 2021],
    ['’21', 2021],
    ['MY21', 2021],
    ['MY 2021', 2021],
    ['2021.0', 2021],
    ['98', 1998],
    ['28', 2028],
    ['1957', 1957],
  ])('reads %j', (text, expected) => expect(read(text)).toBe(expected));

  it.each([
    ['29', 'out-of-range'],
    ['2029', 'out-of-range'],
    ['1900', 'out-of-range'],
    ['1885', 'out-of-range'],
    ['21/22', 'not-a-year'],
    ['202', 'not-a-year'],
    ['', 'empty'],
  ])('refuses %j: %s', (text, reason) => expect(read(text)).toBe(reason));

  it('turns two digits by the year it is now, also at the end of a century', () => {
    expect(read('01', 2099)).toBe(2101);
    expect(read('99', 2099)).toBe(2099);
  });
});
