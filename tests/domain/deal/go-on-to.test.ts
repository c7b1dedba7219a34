import { expect, test } from 'vitest';
import { goOnTo } from '../../../src/domain/deal/go-on-to.ts';
import { cents } from '../../../src/domain/money/cents.ts';

const accepted = [
  { low: cents(0), high: cents(100) },
  { low: cents(200), high: cents(300) },
];

test('one may go on to the end of the interval that holds the next bid, and nowhere from outside', () => {
  const to = (ask: number) => goOnTo({ accepted }, cents(ask));
  expect([0, 50, 100, 101, 199, 200, 250, 300, 301].map(to)).toEqual([100, 100, 100, null, null, 300, 300, 300, null]);
});
