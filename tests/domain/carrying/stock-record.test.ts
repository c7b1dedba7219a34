import { describe, expect, test } from 'vitest';
import { daysAnswer } from '../../../src/domain/carrying/days-answer.ts';
import { stockOf } from '../../../src/domain/carrying/stock-record.ts';
import { type Setup, setupSectionsSchema } from '../../../src/domain/setup/setup.ts';
import { daysWhatIf } from '../../../src/domain/worksheet/days-what-if.ts';
import { pricingContext } from '../../../src/domain/worksheet/pricing-context.ts';
import { standingOf } from '../../../src/domain/worksheet/worksheet-of.ts';
import { SETUP, sheetOf, van } from '../appraisal/lot-for-tests.ts';

const withCars = (cars: readonly object[]): Setup =>
  setupSectionsSchema.parse({ ...SETUP, stock: { asOf: '2026-11-20', cars } });
const slow = Array.from({ length: 20 }, (_, i) => ({ days: 70 + i, sold: i % 4 !== 0 }));

describe('the record of the dealer’s own cars', () => {
  test('moves the max bid everywhere alike: cars that stand long cost more', () => {
    const setup = withCars(slow);
    const sheet = sheetOf(van(), setup);
    const standing = standingOf(van(), pricingContext(setup));
    expect(sheet.result.maxBid ?? 0).toBeLessThan(sheetOf(van()).result.maxBid ?? 0);
    expect(standing.ok && standing.value.maxBid).toBe(sheet.result.maxBid);
  });

  test('counts an unsold car from the age at which it was first seen', () => {
    const [car] = stockOf(withCars([{ days: 90, sold: false, enteredAtDays: 60 }]));
    expect(car).toEqual({ days: 90, sold: false, enteredAt: 60 });
    expect(stockOf(SETUP)).toEqual([]);
  });

  test('is drawn only when enough of them have sold, and counts before that', () => {
    const few = stockOf(withCars(slow.slice(0, 5)));
    const many = stockOf(withCars(slow));
    const usual = daysAnswer(SETUP.carrying, []);
    expect(daysAnswer(SETUP.carrying, few)).toMatchObject({ sold: 3, unsold: 2, steps: [] });
    expect(daysAnswer(SETUP.carrying, few)?.median ?? 0).toBeGreaterThan(usual?.median ?? 0);
    expect(daysAnswer(SETUP.carrying, many)?.steps.length).toBeGreaterThan(8);
    expect(usual?.median).toBeCloseTo(40, 9);
    expect(daysAnswer(SETUP.carrying, [], 1.3)?.median).toBeCloseTo(52, 9);
    expect(daysAnswer({ ...SETUP.carrying, daysToSell: { kind: 'fixed', days: 30 } }, many)).toBeUndefined();
  });
});

describe('half or twice the days to sell', () => {
  test('raise and lower the max bid', () => {
    const now = sheetOf(van()).result.maxBid ?? 0;
    const whatIf = daysWhatIf(van(), pricingContext(SETUP));
    expect(whatIf?.half ?? 0).toBeGreaterThan(now);
    expect(whatIf?.double ?? 0).toBeLessThan(now);
  });

  test('move what his own cars showed along, so that they do not pull it back', () => {
    const setup = withCars(slow);
    const plain = withCars([]);
    const spread = (of: Setup) => {
      const whatIf = daysWhatIf(van(), pricingContext(of));
      return (whatIf?.half ?? 0) - (whatIf?.double ?? 0);
    };
    expect(spread(setup)).toBeGreaterThan(spread(plain));
  });

  test('are nothing for a lot that has no price to stop at', () => {
    expect(daysWhatIf({ ...van(), venueId: 'nowhere' }, pricingContext(SETUP))).toBeUndefined();
  });
});
