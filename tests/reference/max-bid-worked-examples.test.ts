import { describe, expect, test } from 'vitest';
import { goOnTo } from '../../src/domain/deal/go-on-to.ts';
import { maxBid, maxBidOnly } from '../../src/domain/deal/max-bid.ts';
import { breakdownAt } from '../../src/domain/deal/price-breakdown.ts';
import { dollars, flatBandsDeal, holeDeal } from './worked-deals.ts';

// Invented deals, worked by hand: no published source has their figures.
describe('three flat bands, all cash (computed independently)', () => {
  test.each([
    [8100, 504.0],
    [8575, 19.5],
    [8600, -6.0],
    [8625, -31.5],
  ])('at $%d the profit beyond what is required is $%d', (price, slack) => {
    expect(breakdownAt(flatBandsDeal, dollars(price)).slack).toBe(dollars(slack));
  });

  test('the sums at $8,575 and $8,600 are those of the hand calculation', () => {
    const below = breakdownAt(flatBandsDeal, dollars(8575));
    expect([below.fees, below.allIn, below.cash]).toEqual([dollars(500), dollars(9275), dollars(10_275)]);
    expect(below.steps.find((step) => step.key === 'own-cash')?.cents).toBe(dollars(205.5));
    const above = breakdownAt(flatBandsDeal, dollars(8600));
    expect([above.fees, above.allIn, above.cash]).toEqual([dollars(500), dollars(9300), dollars(10_300)]);
    expect(above.steps.find((step) => step.key === 'own-cash')?.cents).toBe(dollars(206));
  });

  test('the max bid is $8,575, and every price from 0 up to it is accepted', () => {
    const result = maxBid(flatBandsDeal);
    expect(result.maxBid).toBe(dollars(8575));
    expect(result.accepted).toEqual([{ low: 0, high: dollars(8575) }]);
    expect(result.limitedBy).toBe('least-dollars');
    expect(result.reEntries).toEqual([]);
  });
});

describe('a percent band that gives way to a cheaper flat one at $10,000 (computed independently)', () => {
  test.each([
    [17_900, [[0, 9575]]],
    [18_000, [[0, 9650]]],
    [
      18_100,
      [
        [0, 9725],
        [10_000, 10_025],
      ],
    ],
    [
      18_200,
      [
        [0, 9800],
        [10_000, 10_100],
      ],
    ],
    [
      18_250,
      [
        [0, 9825],
        [10_000, 10_125],
      ],
    ],
  ])('retail $%d accepts %j', (retail, intervals) => {
    const result = maxBid(holeDeal(retail));
    expect(result.accepted).toEqual(
      intervals.map(([low = 0, high = 0]) => ({ low: dollars(low), high: dollars(high) })),
    );
    expect(result.maxBid).toBe(dollars(intervals[0]?.[1] ?? Number.NaN));
    expect(maxBidOnly(holeDeal(retail))).toBe(result.maxBid);
  });

  test.each([
    [9500, 859, 10_788, 252.24],
    [9750, 879, 11_058, -23.16],
    [9975, 897, 11_301, -271.02],
    [10_000, 579, 11_008, 27.84],
    [10_100, 579, 11_108, -74.16],
  ])('retail $18,100 at $%d: fee %d, all-in %d, slack %d', (price, fee, allIn, slack) => {
    const at = breakdownAt(holeDeal(18_100), dollars(price));
    expect([at.fees, at.allIn, at.slack]).toEqual([dollars(fee), dollars(allIn), dollars(slack)]);
  });

  test('past the hole one may go on to $10,025, inside it not at all', () => {
    const result = maxBid(holeDeal(18_100));
    expect(result.reEntries).toEqual([{ low: dollars(10_000), high: dollars(10_025) }]);
    expect(goOnTo(result, dollars(9000))).toBe(dollars(9725));
    expect(goOnTo(result, dollars(9725))).toBe(dollars(9725));
    expect(goOnTo(result, dollars(9750))).toBeNull();
    expect(goOnTo(result, dollars(9975))).toBeNull();
    expect(goOnTo(result, dollars(10_000))).toBe(dollars(10_025));
    expect(goOnTo(result, dollars(10_050))).toBeNull();
  });

  test('the fall of the fee at $10,000 is told', () => {
    const { cliffs } = maxBid(holeDeal(18_100));
    expect(cliffs).toEqual([
      {
        edge: dollars(10_000),
        before: dollars(9975),
        at: dollars(10_000),
        step: dollars(25),
        extraFee: dollars(579 - 897),
      },
    ]);
  });
});
