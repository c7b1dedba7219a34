import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CostLine, Deal } from '../../../src/domain/deal/deal.ts';
import { maxBid, maxBidOnly } from '../../../src/domain/deal/max-bid.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { FACTOR_UNIT, factor, ppm } from '../../../src/domain/money/rate.ts';
import { dollars, flatBandsDeal, holeDeal, table } from '../../reference/worked-deals.ts';
import { dealArbitrary } from './random-deal.ts';

describe('the max bid', () => {
  test('is never raised by a higher cost, fee, charge, holding cost or required profit', () => {
    const more = fc.integer({ min: 1, max: 40_000 });
    fc.assert(
      fc.property(dealArbitrary(), more, fc.nat({ max: 5 }), (deal, by, pick) => {
        const before = maxBidOnly(deal) ?? -1;
        for (const dearer of dearerDeals(deal, by, pick)) expect(maxBidOnly(dearer) ?? -1).toBeLessThanOrEqual(before);
      }),
      { numRuns: 700 },
    );
  });

  test('is never lowered by more retail', () => {
    fc.assert(
      fc.property(dealArbitrary(), fc.integer({ min: 1, max: 100_000 }), (deal, by) => {
        // A share of retail as least profit takes back part of it, and no more than all of it.
        const richer = { ...deal, retail: cents(deal.retail + by) };
        expect(maxBidOnly(richer) ?? -1).toBeGreaterThanOrEqual(maxBidOnly(deal) ?? -1);
      }),
      { numRuns: 700 },
    );
  });

  test('does not exist when nothing pays, and then shows what is short at a price of 0', () => {
    const poor: Deal = { ...flatBandsDeal, retail: dollars(2900) };
    const result = maxBid(poor);
    expect(result).toMatchObject({ maxBid: null, limitedBy: 'nothing-pays', accepted: [], reEntries: [] });
    expect(result.breakdown.price).toBe(0);
    // 2,900 − 1,000 recon − 200 transport − 300 fee − 30 for the cash − 1,500 profit.
    expect(result.breakdown.slack).toBe(dollars(-130));
    expect(maxBidOnly(poor)).toBeNull();
  });

  test('is 0 for a car that is only worth having free', () => {
    expect(maxBid({ ...flatBandsDeal, retail: dollars(3031) }).maxBid).toBe(0);
  });

  test('takes the price at which the minimum profit is met to the very cent', () => {
    // 26 days at 9.75% on 38,947 are 270.4918, so 270.49; a factor of only eight digits would make it 270.50.
    const deal: Deal = {
      ...flatBandsDeal,
      retail: dollars(37_000 + 450 + 650 + 847 + 270.49 + 1500),
      costs: [
        { kind: 'recon', label: 'Recon', cents: dollars(847) },
        { kind: 'transport', label: 'Transport', cents: dollars(650) },
      ],
      fees: [table('Buy fee', [0, 450])],
      funding: { ...flatBandsDeal.funding, cashFactor: factor((0.0975 * 26) / 365) },
      increments: [{ fromCents: cents(0), stepCents: cents(25_000) }],
    };
    expect(maxBid(deal)).toMatchObject({ maxBid: dollars(37_000), breakdown: { slack: 0 } });
  });

  test('does not exist for a car without any retail', () => {
    expect(maxBid({ ...flatBandsDeal, retail: cents(0) }).maxBid).toBeNull();
  });

  test('is no proxy when only prices above a dear lowest band pay; the way back in is still told', () => {
    const deal: Deal = {
      ...flatBandsDeal,
      retail: dollars(3400),
      fees: [table('Buy fee', [0, 900], [100, 100])],
    };
    const result = maxBid(deal);
    expect(result.maxBid).toBeNull();
    expect(maxBidOnly(deal)).toBeNull();
    expect(result.reEntries).toEqual(result.accepted);
    expect(result.accepted).toEqual([{ low: dollars(100), high: dollars(550) }]);
  });

  test.each([
    ['least-share', { ...flatBandsDeal.rule, shareOfRetail: ppm(200_000) }],
    ['least-return', { ...flatBandsDeal.rule, perCash: factor(0.2) }],
  ] as const)('is limited by the rule that refuses the next price: %s', (limitedBy, rule) => {
    expect(maxBid({ ...flatBandsDeal, rule }).limitedBy).toBe(limitedBy);
  });

  test('is limited by the chance of loss only where that alone refuses the next price', () => {
    const capAt = (limit: number) => (price: number) => price <= dollars(limit);
    expect(maxBid(flatBandsDeal, { riskCap: capAt(8000) })).toMatchObject({
      maxBid: dollars(8000),
      limitedBy: 'loss-chance',
      accepted: [{ low: 0, high: dollars(8000) }],
    });
    expect(maxBid(flatBandsDeal, { riskCap: capAt(8575) }).limitedBy).toBe('least-dollars');
    expect(maxBid(flatBandsDeal, { riskCap: capAt(9000) }).limitedBy).toBe('least-dollars');
    expect(maxBid(flatBandsDeal, { riskCap: () => false })).toMatchObject({ maxBid: null, limitedBy: 'loss-chance' });
    expect(maxBidOnly(flatBandsDeal, { riskCap: capAt(8000) })).toBe(dollars(8000));
  });

  test('asks a dear second rule once when it does not bind', () => {
    let asked = 0;
    const riskCap = () => {
      asked++;
      return true;
    };
    maxBid(flatBandsDeal, { riskCap });
    expect(asked).toBeLessThanOrEqual(2);
  });

  test('goes by the steps of the sale', () => {
    const step = (stepCents: number): Deal => ({
      ...flatBandsDeal,
      increments: [{ fromCents: cents(0), stepCents: cents(stepCents) }],
    });
    expect(maxBid(step(100)).maxBid).toBe(dollars(8594));
    expect(maxBid(step(1)).maxBid).toBe(dollars(8594.12));
    expect(maxBid(step(50_000)).maxBid).toBe(dollars(8500));
  });

  test('tells the fee jumps around it and spares the reader the far ones', () => {
    const { cliffs } = maxBid({ ...flatBandsDeal, retail: dollars(11_500) });
    expect(cliffs).toEqual([
      { edge: dollars(8000), before: dollars(7975), at: dollars(8000), step: dollars(25), extraFee: dollars(100) },
    ]);
    const fromLow = maxBid({ ...flatBandsDeal, retail: dollars(11_500) }, { priceNow: dollars(4000) });
    expect(fromLow.cliffs.map((cliff) => cliff.edge)).toEqual([dollars(5000), dollars(8000)]);
    expect(maxBid(flatBandsDeal, { priceNow: dollars(8000) }).cliffs).toEqual([]);
  });

  test('of the largest amounts the tool takes is still exact', () => {
    const huge: Deal = { ...holeDeal(18_000), retail: cents(1_000_000_000_000), titleKeeps: ppm(1_000_000) };
    const { maxBid: most, breakdown } = maxBid(huge);
    expect(most).not.toBeNull();
    expect(breakdown.slack).toBeGreaterThanOrEqual(0);
    expect(breakdown.slack).toBeLessThan(2600);
  });
});

/** The same deal with one thing after another made dearer. */
function dearerDeals(deal: Deal, by: number, pick: number): Deal[] {
  const kinds: CostLine['kind'][] = ['recon', 'pack', 'overhead', 'transport', 'doubt', 'selling'];
  const plus = (value: number) => cents(value + by);
  return [
    { ...deal, costs: [...deal.costs, { kind: kinds[pick] ?? 'recon', label: 'More', cents: cents(by) }] },
    { ...deal, charges: [...deal.charges, { label: 'More', cents: cents(by) }] },
    { ...deal, rule: { ...deal.rule, dollars: plus(deal.rule.dollars) } },
    { ...deal, funding: { ...deal.funding, flatHold: plus(deal.funding.flatHold) } },
    { ...deal, funding: { ...deal.funding, cashFactor: factor(deal.funding.cashFactor / FACTOR_UNIT + by / 1e6) } },
    { ...deal, unwind: { ...deal.unwind, fixed: plus(deal.unwind.fixed) } },
    {
      ...deal,
      fees: deal.fees.map((t, i) => ({
        ...t,
        bands: t.bands.map((band) => ({
          ...band,
          flatCents: i === 0 ? plus(band.flatCents) : band.flatCents,
        })),
      })),
    },
  ];
}
