import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { profitPoints } from '../../../src/domain/deal/profit-points.ts';
import { sensitivityOf } from '../../../src/domain/deal/sensitivity.ts';
import { lotFactsSchema } from '../../../src/domain/lot/lot.ts';
import { notMeant } from '../../../src/domain/lot/not-meant.ts';
import { ZERO } from '../../../src/domain/money/cents.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { daysWhatIf } from '../../../src/domain/worksheet/days-what-if.ts';
import { pricingContext } from '../../../src/domain/worksheet/pricing-context.ts';
import { walkOf } from '../../../src/domain/worksheet/walk-of.ts';
import { wholeSheet } from '../../../src/domain/worksheet/whole-sheet.ts';
import { standingOf, uncappedStandingOf, worksheetOf } from '../../../src/domain/worksheet/worksheet-of.ts';
import { hostileFacts, plainFacts, poisoned } from '../lot/hostile-facts.ts';
import { inventedSetup } from './invented-setup.ts';

const SETUP = inventedSetup({ rules: { dollarsCents: 150_000, lossChancePpm: 250_000 } });
const context = pricingContext(SETUP);
const NOW = instant(Date.UTC(2026, 10, 25));
const facts = (over: object) =>
  lotFactsSchema.parse({ venueId: 'no-fees', year: 2020, miles: 60_000, retail: { likely: 1_800_000 }, ...over });
const worked = (over: object) => worksheetOf(facts(over), context);

describe('whatever a lot holds', () => {
  test.each([
    ['slips of the keyboard', plainFacts],
    ['the largest amounts that are kept', hostileFacts],
  ])('%s: it is priced, or refused with a sentence and what to do, on all faces alike', (_, made) => {
    fc.assert(
      fc.property(made, (lot) => {
        const sheet = worksheetOf(lot, context);
        const standing = standingOf(lot, context);
        expect(standing.ok).toBe(sheet.ok);
        expect(uncappedStandingOf(lot, context).ok).toBe(sheet.ok);
        if (!sheet.ok) {
          for (const { message, reason } of sheet.problems) {
            expect(message.length).toBeGreaterThan(20);
            // A mistake of ours is no answer to anything that the journal can hold.
            expect(reason).not.toBe('cant-work-out');
          }
          return;
        }
        expect(standing.ok && standing.value).toEqual({
          maxBid: sheet.value.result.maxBid,
          headroom: sheet.value.headroom,
        });
      }),
      { numRuns: Number(process.env.RUNS ?? 500) },
    );
  });

  test('everything that a screen draws of it can be drawn', () => {
    fc.assert(
      fc.property(plainFacts, (lot) => {
        const { outcome } = wholeSheet(lot, context, { now: NOW });
        if (!outcome.ok) return;
        const { deal, result, stopOf } = outcome.value;
        const walk = walkOf(outcome.value);
        expect(walk.from.cents - walk.steps.reduce((sum, step) => sum + step.cents, 0)).toBe(walk.to);
        profitPoints(deal, ZERO, deal.retail);
        sensitivityOf(deal, stopOf);
        daysWhatIf(lot, context);
        expect(result.accepted.every(({ low, high }) => low <= high)).toBe(true);
      }),
      { numRuns: 150 },
    );
  });
});

describe('what can’t be meant is refused with its reason', () => {
  test.each([
    ['a low end of nothing', { retail: { low: 0, likely: 1_800_000 } }, /low end of retail is \$0/],
    ['a low end of nothing and no high one', { retail: { low: 0, likely: 1_800_000, high: 1_800_000 } }, /is \$0/],
    ['a digit too few', { retail: { low: 18_000, likely: 1_800_000 } }, /no range for one car/],
    ['a digit too many', { retail: { likely: 1_800_000, high: 180_000_000 } }, /no range for one car/],
    ['billions', { retail: { likely: 999_999_999_900 } }, /Retail is \$9,999,999,999/],
    [
      'billions of recon',
      { recon: [{ label: 'Tires', amount: { likely: 1e12 } }] },
      /Recon, Tires, is \$10,000,000,000/,
    ],
    [
      'a doubt of billions',
      { claims: [{ about: 'other', statement: 'Runs', worthIfFalse: 1e12 }] },
      /“Runs”, if false/,
    ],
    ['a rival of nothing at least', { sealed: { rival: { low: 0, likely: 900_000 } } }, /best other bid is \$0/],
  ])('%s', (_, over, sentence) => {
    const sheet = worked(over);
    expect(sheet.ok).toBe(false);
    expect(sheet.ok ? '' : sheet.message).toMatch(sentence);
    expect(sheet.ok ? [] : sheet.problems.map(({ reason }) => reason)).toEqual(['not-meant']);
  });

  test('an ordinary range, and a car worth nothing, are not', () => {
    expect(notMeant(facts({ retail: { low: 100_000, likely: 1_800_000, high: 3_000_000 } }))).toEqual([]);
    expect(
      notMeant(facts({ retail: { likely: 0 }, recon: [{ label: 'Tires', amount: { low: 0, likely: 1 } }] })),
    ).toEqual([]);
  });
});

describe('one comparable', () => {
  const good = { kind: 'sold', price: 1_700_000, year: 2020, miles: 60_000 } as const;

  test('that is too far from the car is set aside and says so, and the others count as if it were not there', () => {
    const with1900 = worked({ comps: [good, { ...good, year: 1900 }] });
    const without = worked({ comps: [good] });
    expect(with1900.ok && without.ok && with1900.value.result.maxBid).toBe(without.ok && without.value.result.maxBid);
    const said = with1900.ok ? with1900.value.assumptions.map(({ message }) => message).join(' ') : '';
    expect(said).toContain('Comparable 2: Not counted: 120 years older than this car is too far to compare.');
  });

  test('that is the only one leaves the guess to count alone, and without a guess no max bid', () => {
    const far = [{ ...good, year: 1900 }];
    expect(worked({ comps: far }).ok).toBe(true);
    const none = worked({ comps: far, retail: undefined });
    expect(none.ok ? [] : none.problems.map(({ reason }) => reason)).toEqual(['no-retail']);
  });

  test('some years and miles away is adjusted and counts', () => {
    const sheet = worked({ comps: [{ ...good, year: 2012, miles: 140_000 }] });
    expect(sheet.ok && sheet.value.appraisal.retail?.grid?.counted).toBe(1);
  });
});

test('a mistake of ours in one lot is a refusal of that lot, with its reason and what to do', () => {
  for (const field of ['retail', 'comps', 'claims', 'recon', 'venueId', 'titleId', 'close'] as const) {
    const lot = poisoned(facts({}), field);
    for (const outcome of [worksheetOf(lot, context), standingOf(lot, context), uncappedStandingOf(lot, context)]) {
      expect(outcome.ok ? [] : outcome.problems).toMatchObject([
        { reason: 'cant-work-out', short: 'an amount came out as NaN cents' },
      ]);
    }
    const { outcome, appraisal } = wholeSheet(lot, context, { now: NOW });
    expect(outcome.ok ? '' : outcome.message).toContain('undo the last change');
    expect(appraisal.contradictions).toBeDefined();
  }
});
