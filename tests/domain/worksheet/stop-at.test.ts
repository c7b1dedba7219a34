import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { breakdownAt } from '../../../src/domain/deal/price-breakdown.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { beatsRival } from '../../../src/domain/risk/sealed-sale.ts';
import { type Setup, setupSectionsSchema } from '../../../src/domain/setup/setup.ts';
import { pricingContext } from '../../../src/domain/worksheet/pricing-context.ts';
import { standingOf } from '../../../src/domain/worksheet/worksheet-of.ts';
import { SETUP, sheetOf, van } from '../appraisal/lot-for-tests.ts';

const rival = { low: 10_500_00, likely: 12_000_00, high: 13_500_00 };
const stop = (facts: object) => sheetOf(van(facts)).result.maxBid ?? -1;

describe('where to stop at a sealed sale', () => {
  test('is below the last price that pays, keeps something over, and says why', () => {
    const open = sheetOf(van());
    const sealed = sheetOf(van({ sealed: { rival } }));
    expect(sealed.result.limitedBy).toBe('sealed');
    expect(sealed.result.maxBid ?? 0).toBeLessThan(open.result.maxBid ?? 0);
    expect(sealed.result.breakdown.slack).toBeGreaterThan(0);
    expect(sealed.result.breakdown.price).toBe(sealed.result.maxBid);
    expect(sealed.stopOf(sealed.deal)).toBe(sealed.result.maxBid);
  });

  test('is the max bid itself while nothing is known of the other bids', () => {
    expect(stop({ sealed: {} })).toBe(stop({}));
  });

  test('is the same figure in a list', () => {
    const facts = van({ sealed: { rival }, priceNow: 1_000_00 });
    const standing = standingOf(facts, pricingContext(SETUP));
    expect(standing.ok && standing.value.maxBid).toBe(sheetOf(facts).result.maxBid);
  });

  test('beats most bids of rivals who would pay little, and gives up little where they would pay all', () => {
    const low = stop({ sealed: { rival: { low: 6_000_00, likely: 7_000_00, high: 8_000_00 } } });
    const high = stop({ sealed: { rival } });
    expect(low).toBeGreaterThan(7_000_00);
    expect(low).toBeLessThan(high);
  });

  test('may rise with a fee that rises at lower prices only, and is the best bid both times, at no higher worth', () => {
    const withFee = (below: number): Setup =>
      setupSectionsSchema.parse({
        ...SETUP,
        feeSchedules: [
          {
            ...SETUP.feeSchedules[0],
            editions: [
              {
                tables: [
                  {
                    label: 'Buy fee',
                    bands: [
                      { fromCents: 0, flatCents: below },
                      { fromCents: 10_000_00, flatCents: 900_00 },
                    ],
                  },
                ],
              },
            ],
          },
        ],
      });
    const best = { low: 8_000_00, likely: 9_500_00, high: 11_000_00 };
    // Every price is looked at here, by the chance of winning and the profit that the breakdown shows at it.
    const look = (below: number) => {
      const { deal, result } = sheetOf(van({ sealed: { rival: best } }), withFee(below));
      const worth = (price: number) =>
        beatsRival({ likely: cents(best.likely), low: cents(best.low), high: cents(best.high) })(cents(price)) *
        breakdownAt(deal, cents(price)).slack;
      const prices = Array.from({ length: 700 }, (_, i) => i * 2500);
      return { bid: result.maxBid ?? -1, worth: worth(result.maxBid ?? 0), most: Math.max(...prices.map(worth)) };
    };
    const [cheap, dear] = [look(0), look(900_00)];
    expect(cheap.worth).toBe(cheap.most);
    expect(dear.worth).toBe(dear.most);
    expect(dear.worth).toBeLessThan(cheap.worth);
    expect(dear.bid).toBeGreaterThan(cheap.bid);
  });

  test('never rises with a dearer cost or with more doubt', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 800_000, max: 3_000_000 }),
        fc.integer({ min: 300_000, max: 2_500_000 }),
        fc.integer({ min: 0, max: 200_000 }),
        fc.integer({ min: 2500, max: 200_000 }),
        (likely, best, recon, more) => {
          const facts = (extra: number) => ({
            retail: { likely },
            sealed: { rival: { likely: best } },
            recon: [{ label: 'Tires', amount: { likely: recon + extra } }],
          });
          const claim = { about: 'drive', statement: 'Four-wheel drive', worthIfFalse: more * 10 };
          expect(stop(facts(more))).toBeLessThanOrEqual(stop(facts(0)));
          expect(stop({ ...facts(0), claims: [claim] })).toBeLessThanOrEqual(stop(facts(0)));
        },
      ),
      { numRuns: 60 },
    );
  });
});
