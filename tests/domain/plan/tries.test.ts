import { expect, test } from 'vitest';
import { everyChoice, triesOf } from '../../../src/domain/plan/fixed-bids.ts';
import type { Space, Stage } from '../../../src/domain/plan/space.ts';

const stage = (prices: number): Stage => {
  const each = Array.from({ length: prices }, (_, i) => i);
  return {
    chance: Float64Array.from(each, () => 1 / (prices + 1)),
    ways: [
      {
        cash: Int32Array.from(each, (i) => i + 1),
        line: new Int32Array(prices),
        profit: Float64Array.from(each, (i) => 100 - i),
      },
    ],
    rule: 'best',
    bound: -1,
    upTo: Int32Array.from(each),
    falling: true,
  };
};

test('tries are counted as they cost: every joint choice at every state, with the prices below each bid', () => {
  // Bids of one lot: none, or up to the 1st, 2nd or 3rd price. 4 × (1.5 prices + 1), and 4 to compare.
  expect(triesOf([stage(3)], 10)).toBe(140);

  const space: Space = { cash: 10, lines: 1, places: null };
  const lots = [stage(12), stage(12), stage(12)];
  let choices = 0;
  everyChoice(new Float64Array(10), space, lots, () => {
    choices += 1;
  });
  expect(choices).toBe(13 ** 3);
  // Each of them goes over half of the 12 prices, so a count of the choices alone is several times too low.
  expect(triesOf(lots, 10)).toBeGreaterThan(choices * 10 * 7);
});
