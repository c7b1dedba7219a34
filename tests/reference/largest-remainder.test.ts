import { describe, expect, test } from 'vitest';
import { cents } from '../../src/domain/money/cents.ts';
import { splitByLargestRemainder } from '../../src/domain/money/split-by-largest-remainder.ts';

/**
 * The 1790 census, as both of these print it: electowiki, "Hamilton method" (60 seats), and COMAP, For All Practical
 * Purposes, 10th edition, chapter 14, example 6 (the 120 seats of Hamilton's own bill of 1792, which was vetoed).
 */
const STATES = [
  { state: 'Virginia', people: 630_560, of60: 11, of120: 21 },
  { state: 'Massachusetts', people: 475_327, of60: 8, of120: 16 },
  { state: 'Pennsylvania', people: 432_879, of60: 7, of120: 14 },
  { state: 'North Carolina', people: 353_523, of60: 6, of120: 12 },
  { state: 'New York', people: 331_589, of60: 6, of120: 11 },
  { state: 'Maryland', people: 278_514, of60: 5, of120: 9 },
  { state: 'Connecticut', people: 236_841, of60: 4, of120: 8 },
  { state: 'South Carolina', people: 206_236, of60: 3, of120: 7 },
  { state: 'New Jersey', people: 179_570, of60: 3, of120: 6 },
  { state: 'New Hampshire', people: 141_822, of60: 2, of120: 5 },
  { state: 'Vermont', people: 85_533, of60: 1, of120: 3 },
  { state: 'Georgia', people: 70_835, of60: 1, of120: 2 },
  { state: 'Kentucky', people: 68_705, of60: 1, of120: 2 },
  { state: 'Rhode Island', people: 68_446, of60: 1, of120: 2 },
  { state: 'Delaware', people: 55_540, of60: 1, of120: 2 },
];
const people = STATES.map((state) => state.people);

describe("Hamilton's method for the House of 1792", () => {
  test('gives each state its seats of 120', () => {
    expect(people.reduce((sum, one) => sum + one)).toBe(3_615_920);
    expect(splitByLargestRemainder(cents(120), people)).toEqual(STATES.map((state) => state.of120));
  });

  test('gives each state its seats of 60', () => {
    expect(splitByLargestRemainder(cents(60), people)).toEqual(STATES.map((state) => state.of60));
  });
});

describe('amounts of money', () => {
  test.each([
    // Martin Fowler, Patterns of Enterprise Application Architecture, "Money": five cents as 70 to 30.
    { amount: 5, weights: [70, 30], shares: [4, 1] },
    // The documentation of a money library for JavaScript (dinero.js): 8.00 among three.
    { amount: 800, weights: [1, 1, 1], shares: [267, 267, 266] },
    // Votes and seats of the usual textbook example of the largest remainder; the shares worked out by hand.
    { amount: 10, weights: [47_000, 16_000, 15_900, 12_000, 6000, 3100], shares: [5, 2, 1, 1, 1, 0] },
    // The Alabama paradox with small numbers: a larger amount may lower a share. It is Hamilton's, and known.
    { amount: 10, weights: [6, 6, 2], shares: [4, 4, 2] },
    { amount: 11, weights: [6, 6, 2], shares: [5, 5, 1] },
  ])('$amount by $weights', ({ amount, weights, shares }) => {
    expect(splitByLargestRemainder(cents(amount), weights)).toEqual(shares);
  });
});
