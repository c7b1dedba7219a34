import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Deal } from '../../../src/domain/deal/deal.ts';
import { breakdownAt, type PriceBreakdown } from '../../../src/domain/deal/price-breakdown.ts';
import { cents, sumCents } from '../../../src/domain/money/cents.ts';
import { factor, ppm } from '../../../src/domain/money/rate.ts';
import { dollars, flatBandsDeal, holeDeal } from '../../reference/worked-deals.ts';
import { dealArbitrary } from './random-deal.ts';

const stepOf = (breakdown: PriceBreakdown, key: string) => breakdown.steps.find((step) => step.key === key);

describe('the worksheet at a price', () => {
  test('adds up: retail less every step is the price, to the cent', () => {
    fc.assert(
      fc.property(dealArbitrary(5_000_000), fc.nat({ max: 6_000_000 }), (deal, at) => {
        const { price, retail, steps, profit, required, slack } = breakdownAt(deal, cents(at));
        expect(retail.cents - sumCents(steps.map((step) => step.cents))).toBe(price);
        expect(profit - required).toBe(slack);
        expect(new Set(steps.map((step) => step.key)).size).toBe(steps.length);
        expect([retail, ...steps].every((line) => !Object.is(line.cents, -0))).toBe(true);
      }),
      { numRuns: 2000 },
    );
  });

  test('leaves out lines of nothing, but never the profit and what is left over', () => {
    const { steps } = breakdownAt(flatBandsDeal, dollars(8575));
    expect(steps.map((step) => step.key)).toEqual([
      'recon-0',
      'transport-1',
      'fee-0',
      'own-cash',
      'required-profit',
      'slack',
    ]);
    const exact: Deal = { ...flatBandsDeal, retail: cents(flatBandsDeal.retail - dollars(19.5)) };
    expect(stepOf(breakdownAt(exact, dollars(8575)), 'slack')?.cents).toBe(0);
  });

  test('says so when the price is too high for the profit that is required', () => {
    expect(stepOf(breakdownAt(flatBandsDeal, dollars(8575)), 'slack')?.label).toBe('Left by rounding down');
    const short = stepOf(breakdownAt(flatBandsDeal, dollars(8600)), 'slack');
    expect(short).toMatchObject({ label: 'Short of that profit', cents: -600 });
  });

  test('splits the money between lender and own cash', () => {
    const floored: Deal = {
      ...flatBandsDeal,
      funding: {
        kind: 'floor',
        advance: ppm(900_000),
        advanceOnFees: false,
        floorFactor: factor(0.01),
        cashFactor: factor(0.02),
        flatHold: dollars(75),
      },
    };
    const plain = breakdownAt(floored, dollars(8000));
    expect(plain.financed).toBe(dollars(7200));
    expect(plain.cash).toBe(dollars(8000 + 500 + 200 - 7200 + 1000));
    expect(stepOf(plain, 'interest')?.cents).toBe(dollars(72));
    expect(stepOf(plain, 'own-cash')?.cents).toBe(dollars(50));
    expect(stepOf(plain, 'holding')?.cents).toBe(dollars(75));

    const withFees = { ...floored, funding: { ...floored.funding, advanceOnFees: true } };
    expect(breakdownAt(withFees, dollars(8000)).financed).toBe(dollars(7650));
    const charged = { ...withFees, charges: [{ label: 'Gate', cents: dollars(100) }] };
    expect(breakdownAt(charged, dollars(8000)).financed).toBe(dollars(7740));
    const capped = { ...withFees, funding: { ...withFees.funding, advanceCap: dollars(5000) } };
    expect(breakdownAt(capped, dollars(8000)).financed).toBe(dollars(5000));
  });

  test('a lender advances whole cents, rounded down', () => {
    const funding = { ...flatBandsDeal.funding, kind: 'floor' as const, advance: ppm(666_667) };
    expect(breakdownAt({ ...flatBandsDeal, funding }, cents(100)).financed).toBe(66);
  });

  test('a charge costs the same entered as a charge or as a table with one flat band', () => {
    fc.assert(
      fc.property(dealArbitrary(), fc.nat({ max: 900_000 }), (deal, at) => {
        const asTables: Deal = {
          ...deal,
          charges: [],
          fees: [
            ...deal.fees,
            ...deal.charges.map(({ label, cents: flatCents }) => ({
              label,
              rounding: 'half-up' as const,
              bands: [{ fromCents: cents(0), flatCents, ratePpm: ppm(0) }],
            })),
          ],
        };
        const one = breakdownAt(deal, cents(at));
        const other = breakdownAt(asTables, cents(at));
        expect([other.allIn, other.financed, other.cash, other.slack]).toEqual([
          one.allIn,
          one.financed,
          one.cash,
          one.slack,
        ]);
      }),
      { numRuns: 300 },
    );
  });

  test.each([
    ['least-dollars', { dollars: dollars(1500), shareOfRetail: ppm(100_000), perCash: factor(0.1) }, dollars(1500)],
    ['least-share', { dollars: dollars(1500), shareOfRetail: ppm(150_000), perCash: factor(0.1) }, dollars(1800)],
    ['least-return', { dollars: dollars(1000), shareOfRetail: ppm(100_000), perCash: factor(0.2) }, dollars(2055)],
  ] as const)('the largest of the three least profits binds: %s', (requiredBy, rule, required) => {
    // Cash at $8,575 is $10,275.
    expect(breakdownAt({ ...flatBandsDeal, rule }, dollars(8575))).toMatchObject({ requiredBy, required });
  });

  test('an undone sale takes its share of the profit and of what does not come back', () => {
    const deal: Deal = { ...flatBandsDeal, unwind: { chance: ppm(30_000), fixed: dollars(400), rate: ppm(10_000) } };
    const sure = breakdownAt(flatBandsDeal, dollars(8000));
    const doubtful = breakdownAt(deal, dollars(8000));
    const undone = 0.03 * (sure.profit / 100 + 400 + 80);
    expect(stepOf(doubtful, 'undone')?.cents).toBe(dollars(undone));
    expect(doubtful.profit).toBe(sure.profit - dollars(undone));
  });

  test('the title comes off retail before a share of it is asked for', () => {
    const deal: Deal = {
      ...holeDeal(18_000),
      titleName: 'Rebuilt',
      rule: { dollars: dollars(0), shareOfRetail: ppm(100_000), perCash: factor(0) },
    };
    const at = breakdownAt(deal, dollars(5000));
    expect(stepOf(at, 'title')).toMatchObject({ label: 'Title discount: Rebuilt', cents: dollars(3600) });
    expect(at.required).toBe(dollars(1440));
  });
});
