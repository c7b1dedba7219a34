import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { LotId } from '../../../src/domain/lot/lot.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import type { Result } from '../../../src/domain/sale/result.ts';
import { totalResults } from '../../../src/domain/sale/result-totals.ts';
import { startingSetup } from '../../../src/domain/setup/starting-setup.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { DAY } from '../../../src/domain/time/units.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import { type ResultRow, rowsUnder } from '../../../src/views/results/result-row.ts';
import { FIRST_VIEW, GROUPS, groupsOf, OUTCOMES, rowsInView, SORTS } from '../../../src/views/results/result-view.ts';
import { sayReview } from '../../../src/views/results/review-words.ts';

const MONDAY = Date.UTC(2026, 3, 13, 18);
const setup = startingSetup(zone('America/Boise'));

function lot(number: number, result: Result, day = 0, maxBid: number | string | null = 10_000): LotState {
  return {
    id: `${number}`.padStart(26, '0') as LotId,
    facts: { make: number % 2 === 0 ? 'Alder' : 'Birch', venueName: `Yard ${number % 3}` },
    evidence: {},
    source: 'typed',
    addedAt: instant(0),
    changedAt: instant(0),
    dropped: false,
    bornIn: '0'.repeat(26) as LotState['bornIn'],
    sale: {
      bids: [],
      result: {
        entry: '0'.repeat(26) as LotState['bornIn'],
        result,
        at: instant(MONDAY + day * DAY),
        notedAt: instant(0),
        author: 'buyer',
        ...(typeof maxBid !== 'string' && { maxBidCents: maxBid === null ? null : cents(maxBid * 100) }),
      },
    },
  };
}

const rowOf = rowsUnder(setup);
const rows = (...lots: LotState[]): ResultRow[] => lots.flatMap((one) => rowOf(one) ?? []);
const won = (n: number): Result => ({ ended: 'won', hammerCents: cents(n * 100) });
const lost = (n: number): Result => ({ ended: 'lost', hammerCents: cents(n * 100) });

test('a view narrows by outcome, week, venue and words, and says so in any order of typing', () => {
  const all = rows(lot(0, won(9000)), lot(1, lost(9000), -1), lot(2, lost(12_000)), lot(3, { ended: 'not-sold' }, -8));
  const shown = (over: object) => rowsInView(all, { ...FIRST_VIEW, ...over }).map(({ lot: { id } }) => Number(id));
  expect(shown({})).toEqual([0, 2, 1, 3]);
  expect(shown({ outcome: 'lost' })).toEqual([2, 1]);
  expect(shown({ outcome: 'within-reach' })).toEqual([1]);
  expect(shown({ venue: 'Yard 0' })).toEqual([0, 3]);
  expect(shown({ week: '2026-04-13' })).toEqual([0, 2]);
  expect(shown({ search: 'yard BIRCH' })).toEqual([1, 3]);
  expect(shown({ sort: 'over-max' })).toEqual([2, 0, 1, 3]);
  expect(shown({ sort: 'hammer' })).toEqual([2, 0, 1, 3]);
});

test('the week is that of the store: a sale late on Sunday there is not Monday’s', () => {
  const lateSunday = lot(1, won(1), 0);
  const moved = {
    ...lateSunday,
    sale: { bids: [], result: { ...lateSunday.sale?.result, at: instant(Date.UTC(2026, 3, 13, 5)) } },
  };
  expect(rows(moved as LotState)[0]).toMatchObject({ date: '2026-04-12', week: '2026-04-06' });
});

test('whatever the view, its groups hold each shown row once and add up to its totals', () => {
  const result = fc.oneof(
    fc.nat(20_000).map((n) => won(n + 1)),
    fc.nat(20_000).map((n) => lost(n + 1)),
    fc.constant<Result>({ ended: 'pending' }),
  );
  const lots = fc.array(fc.tuple(result, fc.nat(40), fc.option(fc.nat(20_000), { nil: 'unknown' as const })), {
    maxLength: 30,
  });
  const view = fc.record({
    outcome: fc.constantFrom(...OUTCOMES),
    venue: fc.constantFrom('', 'Yard 1'),
    week: fc.constant(''),
    search: fc.constantFrom('', 'alder'),
    sort: fc.constantFrom(...SORTS),
    group: fc.constantFrom(...GROUPS),
  });
  fc.assert(
    fc.property(lots, view, (drawn, wanted) => {
      const shown = rowsInView(rows(...drawn.map(([one, day, max], i) => lot(i, one, -day, max))), wanted);
      const totals = totalResults(shown);
      const groups = groupsOf(shown, wanted.group);
      expect(groups.reduce((sum, group) => sum + group.totals.count, 0)).toBe(shown.length);
      expect(groups.reduce((sum, group) => sum + group.totals.hammer, 0)).toBe(totals.hammer);
      expect(new Set(groups.map(({ key }) => key)).size).toBe(groups.length);
    }),
    { numRuns: 60 },
  );
});

test.each([
  [won(9500), 10_000, '$500 under our max'],
  [won(10_400), 10_000, '$400 over our max'],
  [lost(10_600), 10_000, '$600 over our max'],
  [lost(9000), 10_000, '$1,000 below our max'],
  [lost(10_000), 10_000, 'one increment over our max'],
  [lost(9000), null, 'not worth bidding'],
  [lost(9000), 'unknown', 'no max bid recorded'],
  [{ ended: 'lost' } as Result, 10_000, 'price not recorded'],
  [{ ended: 'not-sold' } as Result, 10_000, ''],
])('%o beside a max bid of %o reads “%s”', (result, maxBid, words) => {
  const [row] = rows({ ...lot(1, result, 0, maxBid), id: '7'.repeat(26) as LotId });
  expect(row && sayReview(row)).toBe(words);
});
