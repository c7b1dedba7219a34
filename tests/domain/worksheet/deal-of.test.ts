import { describe, expect, test } from 'vitest';
import { holdFactors } from '../../../src/domain/carrying/hold-factors.ts';
import type { Deal } from '../../../src/domain/deal/deal.ts';
import { lotFactsSchema } from '../../../src/domain/lot/lot.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { factor, ppm } from '../../../src/domain/money/rate.ts';
import { closeTimeSchema } from '../../../src/domain/time/close-time.ts';
import { dealOf } from '../../../src/domain/worksheet/deal-of.ts';
import { pricingContext } from '../../../src/domain/worksheet/pricing-context.ts';
import { inventedSetup } from './invented-setup.ts';

const closing = (iso: string) =>
  closeTimeSchema.parse({
    instant: Date.parse(iso),
    text: iso,
    zone: 'America/Phoenix',
    how: 'stated-offset',
    doubts: [],
    otherwise: [],
  });
const CLOSE = closing('2025-11-29T20:00:00Z');
const facts = (over: object = {}) =>
  lotFactsSchema.parse({ venueId: 'ocotillo', retail: { likely: 1_800_000 }, close: CLOSE, ...over });

function deal(over: object = {}, setup = inventedSetup()): Deal {
  const outcome = dealOf(facts(over), pricingContext(setup));
  if (!outcome.ok) throw new Error(outcome.message);
  return outcome.value;
}
const reasons = (lot: object, setup = inventedSetup()) => {
  const outcome = dealOf(lotFactsSchema.parse(lot), pricingContext(setup));
  return outcome.ok ? [] : outcome.problems.map((problem) => problem.reason);
};

describe('a lot that lacks something', () => {
  test('is refused with everything that is missing at once, a sentence each', () => {
    const outcome = dealOf(lotFactsSchema.parse({ titleId: 'soaked' }), pricingContext(inventedSetup()));
    if (outcome.ok) throw new Error('it has nothing to go by');
    expect(outcome.reason).toBe('incomplete');
    expect(outcome.problems.map((problem) => problem.reason)).toEqual(['no-retail', 'unknown-title', 'no-venue']);
    for (const { message } of outcome.problems) {
      expect(message).toMatch(/^[A-Z].*\.$/);
      expect(outcome.message).toContain(message);
    }
  });

  test('without a venue is never priced as if there were no fees', () => {
    expect(reasons({ retail: { likely: 1_000_000 } })).toEqual(['no-venue']);
  });

  test('with a venue that the setup does not know says which', () => {
    const outcome = dealOf(
      facts({ venueId: 'elsewhere', venueName: 'Elsewhere Motors Sale' }),
      pricingContext(inventedSetup()),
    );
    expect(outcome).toMatchObject({ ok: false, problems: [{ reason: 'unknown-venue' }] });
    expect(outcome.ok ? '' : outcome.message).toContain('“Elsewhere Motors Sale”');
  });

  test('at a venue whose fees are missing, or do not hold that day, is refused', () => {
    const without = inventedSetup({ feeSchedules: [] });
    expect(reasons(facts(), without)).toEqual(['unknown-fees']);
    const old = inventedSetup();
    const ended = { ...old, feeSchedules: old.feeSchedules.map((s) => ({ ...s, editions: s.editions.slice(0, 1) })) };
    expect(reasons(facts({ close: closing('2025-12-06T20:00:00Z') }), ended)).toEqual(['no-edition']);
  });

  test('without a close is refused where the fees go by the date', () => {
    expect(reasons({ venueId: 'ocotillo', retail: { likely: 1_000_000 } })).toEqual(['needs-date']);
    expect(reasons({ venueId: 'no-fees', retail: { likely: 1_000_000 } })).toEqual([]);
  });
});

describe('the venue', () => {
  test('is found by its name, whatever the case, when no id is given', () => {
    expect(deal({ venueId: undefined, venueName: ' ocotillo truck SALE ' }).charges).toEqual([
      { label: 'Gate pass', cents: 5000 },
    ]);
  });

  test('gives the steps, unless the lot has its own', () => {
    expect(deal().increments).toHaveLength(2);
    expect(deal({ increment: 12_500 }).increments).toEqual([{ fromCents: 0, stepCents: 12_500 }]);
  });

  test('decides by its own calendar which edition of the fees holds', () => {
    const flat = (iso: string) => deal({ close: closing(iso) }).fees[0]?.bands[0]?.flatCents;
    // Arizona is seven hours behind UTC all year: at 06:59 UTC it is still November there.
    expect(flat('2025-12-01T06:59:00Z')).toBe(20_000);
    expect(flat('2025-12-01T07:00:00Z')).toBe(30_000);
  });
});

describe('the money', () => {
  test('comes from the floor plan when there is one and the title can go on it', () => {
    const { funding } = deal();
    expect(funding).toEqual({
      kind: 'floor',
      advance: 900_000,
      advanceOnFees: false,
      advanceCap: 2_000_000,
      floorFactor: factor((0.073 * 40) / 365),
      cashFactor: factor((0.1095 * 40) / 365),
      flatHold: 300 * 40 + 7500,
    });
  });

  test.each([
    ['the lot says cash', { funding: 'cash' }, inventedSetup()],
    ['the title can’t be floored', { titleId: 'rebuilt' }, inventedSetup()],
    ['the title can’t be floored, whatever the lot says', { titleId: 'rebuilt', funding: 'floor' }, inventedSetup()],
    [
      'there is no floor plan',
      { funding: 'floor' },
      inventedSetup({ carrying: { daysToSell: { kind: 'fixed', days: 40 }, lotCentsPerDay: 300 } }),
    ],
  ])('comes from own cash when %s, without the lender’s unit fee', (_, over, setup) => {
    const { funding } = deal(over, setup);
    expect(funding.kind).toBe('cash');
    expect(funding.flatHold).toBe(300 * 40);
  });

  test('must earn its return over the expected days', () => {
    expect(deal().rule.perCash).toBe(factor(0.04));
    const absurd = inventedSetup({ rules: { dollarsCents: 0, perCashDayPpm: 10_000_000 } });
    expect(deal({}, absurd).rule.perCash).toBe(factor(100));
  });

  test('takes hold factors from outside in place of the setup’s', () => {
    const setup = inventedSetup();
    const slow = holdFactors({ ...setup.carrying, daysToSell: { kind: 'fixed', days: 80 } });
    const outcome = dealOf(facts(), pricingContext(setup, { hold: () => slow }));
    expect(outcome).toMatchObject({ ok: true, value: { funding: { floorFactor: slow.floorFactor } } });
    const lotOnly = dealOf(facts(), pricingContext(setup), { hold: () => slow });
    expect(lotOnly).toEqual(outcome);
  });
});

describe('the title', () => {
  test('not stated is taken as clean', () => {
    expect(deal()).toMatchObject({ titleKeeps: ppm(1_000_000) });
    expect(deal().titleName).toBeUndefined();
  });

  test('takes its share off retail and is named', () => {
    expect(deal({ titleId: 'rebuilt' })).toMatchObject({ titleKeeps: 800_000, titleName: 'Rebuilt' });
  });
});

describe('an appraisal', () => {
  test('takes the place of the lot’s own retail figure, which may then be missing', () => {
    const appraisal = { retail: { mean: cents(1_712_345), low: cents(1_600_000), high: cents(1_900_000) } };
    const outcome = dealOf(facts({ retail: undefined }), pricingContext(inventedSetup()), appraisal);
    expect(outcome).toMatchObject({
      ok: true,
      value: { retail: 1_712_345, retailRange: { low: 1_600_000, high: 1_900_000 } },
    });
  });

  test('adds its doubts before the other costs', () => {
    const doubt = { kind: 'doubt' as const, label: 'Doubt: four-wheel drive', cents: cents(22_000) };
    const outcome = dealOf(facts(), pricingContext(inventedSetup()), { costs: [doubt] });
    expect(outcome.ok && outcome.value.costs[0]).toEqual(doubt);
  });
});

test('a range of retail with one end only has the likely figure at the other', () => {
  expect(deal({ retail: { likely: 1_800_000, low: 1_700_000 } }).retailRange).toEqual({
    low: 1_700_000,
    high: 1_800_000,
  });
  expect(deal().retailRange).toBeUndefined();
});
