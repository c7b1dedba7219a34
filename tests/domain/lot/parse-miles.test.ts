import { describe, expect, it } from 'vitest';
import { parseMiles } from '../../../src/domain/lot/parse-miles.ts';

const read = (text: string, decimal?: '.' | ',') => {
  const miles = parseMiles(text, decimal === undefined ? {} : { decimal });
  return miles.ok ? miles.value : miles.reason;
};

describe('an odometer', () => {
  it.each([
    ['45,210 mi', 45_210],
    ['45210', 45_210],
    ['45,210.9', 45_210],
    ['72k', 72_000],
    ['72.3k mi', 72_300],
    ['72 k miles', 72_000],
    ['45,210 (actual) mi', 45_210],
    ['Odometer: 45,210', 45_210],
    ['0', 0],
  ])('reads %j as whole miles', (text, expected) => expect(read(text)).toBe(expected));

  // The international mile of 1,609.344 m: 116,000 km is 72,079.05 miles, 100 km 62.14 (computed independently).
  it.each([
    ['116.000 km', 72_079],
    ['116,000 km', 72_079],
    ['116 000 kilometres', 72_079],
    ['100 km', 62],
    ['72km', 45],
    ['1.234.567 km', 767_124],
  ])('converts %j', (text, expected) => expect(read(text)).toBe(expected));

  it.each([
    ['TMU', 'unknown-miles'],
    ['45,210 TMU', 'unknown-miles'],
    ['Exempt', 'unknown-miles'],
    ['not actual', 'unknown-miles'],
    ['45.210', 'ambiguous'],
    ['-5', 'not-miles'],
    ['a few', 'not-miles'],
    ['2,000,001', 'too-large'],
    ['', 'empty'],
  ])('refuses %j: %s', (text, reason) => expect(read(text)).toBe(reason));

  it('reads a point between thousands where it is known to be one', () => expect(read('45.210', ',')).toBe(45_210));
});
