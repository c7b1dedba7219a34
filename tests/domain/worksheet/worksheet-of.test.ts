import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { maxBid } from '../../../src/domain/deal/max-bid.ts';
import { claimSchema } from '../../../src/domain/lot/claim.ts';
import { lotFactsSchema } from '../../../src/domain/lot/lot.ts';
import { ppm } from '../../../src/domain/money/rate.ts';
import { compSchema } from '../../../src/domain/retail/comp.ts';
import { pricingContext } from '../../../src/domain/worksheet/pricing-context.ts';
import { standingOf, type Worksheet, worksheetOf } from '../../../src/domain/worksheet/worksheet-of.ts';
import { inventedSetup } from './invented-setup.ts';

const openEnded = inventedSetup({
  feeSchedules: [
    {
      id: 'ocotillo-buyer',
      name: 'Ocotillo buyer fees',
      editions: [
        {
          tables: [
            {
              label: 'Buy fee',
              bands: [
                { fromCents: 0, flatCents: 20_000 },
                { fromCents: 500_000, ratePpm: 80_000 },
                { fromCents: 1_000_000, flatCents: 45_000 },
              ],
            },
          ],
          charges: [{ label: 'Gate pass', cents: 5000 }],
        },
      ],
    },
  ],
});
const context = pricingContext(openEnded);
const facts = (over: object = {}) =>
  lotFactsSchema.parse({ venueId: 'ocotillo', retail: { likely: 1_600_000 }, ...over });

function worksheet(over: object = {}): Worksheet {
  const outcome = worksheetOf(facts(over), context);
  if (!outcome.ok) throw new Error(outcome.message);
  return outcome.value;
}

describe('the worksheet of a lot', () => {
  test('is the deal and its max bid', () => {
    const { deal, result } = worksheet();
    expect(result).toEqual(maxBid(deal));
    expect(result.maxBid).not.toBeNull();
  });

  test('has as headroom the max bid less the price now, below 0 once the price is past it', () => {
    const { result } = worksheet();
    const most = result.maxBid ?? Number.NaN;
    expect(worksheet({ priceNow: 800_000 }).headroom).toBe(most - 800_000);
    expect(worksheet({ priceNow: most }).headroom).toBe(0);
    expect(worksheet({ priceNow: most + 2500 }).headroom).toBe(-2500);
    expect(worksheet().headroom).toBeNull();
    expect(worksheet({ retail: { likely: 100_000 }, priceNow: 0 }).headroom).toBeNull();
  });

  test('says how far to go on from the next bid, past a hole too', () => {
    const { result } = worksheet({ retail: { likely: 1_460_000 } });
    const [first, second] = result.accepted;
    if (first === undefined || second === undefined) throw new Error('this deal has a hole');
    const at = (priceNow: number) => worksheet({ retail: { likely: 1_460_000 }, priceNow }).goOn;
    expect(at(0)).toBe(first.high);
    expect(at(first.high - 2500)).toBe(first.high);
    expect(at(first.high)).toBeNull();
    expect(at(second.low - 1)).toBe(second.high);
    expect(at(second.high)).toBeNull();
    expect(worksheet({ retail: { likely: 1_460_000 } }).goOn).toBeNull();
  });

  test('is refused with what is missing', () => {
    expect(worksheetOf({}, context)).toMatchObject({ ok: false, reason: 'incomplete' });
    expect(standingOf({}, context)).toEqual(worksheetOf({}, context));
  });

  test('says what it takes for granted', () => {
    expect(worksheet().assumptions.map((one) => one.about)).toEqual(['title', 'recon', 'close']);
    expect(worksheet({ titleId: 'rebuilt', funding: 'floor' }).assumptions.map((one) => one.message)).toContain(
      '“Rebuilt” can’t go on the floor plan. It takes cash.',
    );
    const free = worksheetOf(facts({ venueId: 'no-fees', titleId: 'clean' }), context);
    expect(free.ok && free.value.assumptions.map((one) => one.about)).toEqual(['recon']);
  });

  test('keeps the chance of a loss under the dealer’s cap, and says so where that is what stops it', () => {
    const wide = { retail: { low: 1_100_000, likely: 1_600_000, high: 2_200_000 } };
    const careful = pricingContext({ ...openEnded, rules: { ...openEnded.rules, lossChancePpm: ppm(100_000) } });
    const bold = pricingContext({ ...openEnded, rules: { ...openEnded.rules, lossChancePpm: ppm(1_000_000) } });
    const capped = worksheetOf(facts(wide), careful);
    const free = worksheetOf(facts(wide), bold);
    if (!capped.ok || !free.ok) throw new Error('both have all they need');
    expect(capped.value.result.limitedBy).toBe('loss-chance');
    expect(free.value.result.limitedBy).not.toBe('loss-chance');
    expect(capped.value.result.maxBid ?? 0).toBeLessThan(free.value.result.maxBid ?? 0);
    expect(capped.value.stopOf(capped.value.deal)).toBe(capped.value.result.maxBid);
    expect(free.value.stopOf(capped.value.deal)).toBe(free.value.result.maxBid);
  });

  test('prices what the listing is doubted for', () => {
    const claim = { about: 'drive', statement: 'Four-wheel drive', evidence: 'refuted', worthIfFalse: 100_000 };
    const doubted = worksheet({ claims: [claimSchema.parse(claim)] });
    expect(doubted.deal.costs[0]).toMatchObject({ kind: 'doubt', cents: 100_000 });
    expect(doubted.result.maxBid ?? 0).toBeLessThan(worksheet().result.maxBid ?? 0);
  });

  test('starts from comparables where there are some', () => {
    const comps = [{ kind: 'sold', price: 1_200_000 }].map((comp) => compSchema.parse(comp));
    expect(worksheet({ comps }).deal.retail).toBeLessThan(1_600_000);
    expect(worksheet({ comps, retail: undefined }).deal.retail).toBe(1_200_000);
  });

  test('and the short form for lists agree', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 4_000_000 }),
        fc.integer({ min: 0, max: 2_000_000 }),
        (likely, priceNow) => {
          const lot = facts({ retail: { likely }, priceNow });
          const long = worksheetOf(lot, context);
          expect(standingOf(lot, context)).toEqual({
            ok: true,
            value: long.ok && { maxBid: long.value.result.maxBid, headroom: long.value.headroom },
          });
        },
      ),
    );
  });
});
