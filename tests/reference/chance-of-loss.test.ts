import { describe, expect, test } from 'vitest';
import { LOSS_DEALS, lossChancesOf } from '../../scripts/number/loss-deals.ts';

// Judge: four million draws of each deal with numpy and scipy. The deals are invented, so no published source has them.
/** A tenth of a point. */
const NEAR = 0.001;

describe('the chance of loss is within a tenth of a point of a simulation', () => {
  test.each(LOSS_DEALS)('$note', (deal) => {
    const { typed, withCarSpread } = lossChancesOf(deal);
    expect(Math.abs(typed - deal.typed)).toBeLessThan(NEAR);
    expect(Math.abs(withCarSpread - deal.withCarSpread)).toBeLessThan(NEAR);
  });

  test('of thirty deals, half of them under a ceiling', () => {
    expect(LOSS_DEALS).toHaveLength(30);
    expect(LOSS_DEALS.filter(({ ceiling }) => ceiling !== null)).toHaveLength(17);
  });
});
