import { expect, test } from 'vitest';
import { demoScenario } from '../../../src/demo/demo-scenario.ts';
import type { LotId } from '../../../src/domain/lot/lot.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import type { PurseEntry } from '../../../src/domain/setup/purse-entry.ts';
import { type Instant, instant } from '../../../src/domain/time/instant.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { DAY, HOUR } from '../../../src/domain/time/units.ts';
import { pricingContext } from '../../../src/domain/worksheet/pricing-context.ts';
import { EMPTY_BOOKS } from '../../../src/folds/fold-books.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import type { EntryId } from '../../../src/journal/ids.ts';
import { purseOf } from '../../../src/views/plan/purse-of.ts';

/** A Thursday morning in Idaho. */
const NOW = instant(Date.UTC(2026, 10, 26, 17));
const { setup, lots } = demoScenario(NOW, () => '' as LotId);
const context = pricingContext(setup);
const facts = { ...lots[3]?.facts, funding: 'cash' as const };
const noted = { entry: 'E' as EntryId, notedAt: NOW, author: 'buyer' };

function won(at: Instant, paidAt?: Instant): LotState {
  return {
    id: 'L' as LotId,
    facts,
    evidence: {},
    source: 'typed',
    addedAt: at,
    changedAt: at,
    dropped: false,
    bornIn: noted.entry,
    sale: { bids: [], result: { result: { ended: 'won', hammerCents: cents(1_000_000) }, at, ...noted, notedAt: at } },
    ...(paidAt !== undefined && {
      after: { disputes: [], steps: { pay: [{ at: paidAt, ...noted, notedAt: paidAt }] } },
    }),
  };
}

const purse = (entry: Partial<PurseEntry>, all: readonly LotState[] = [], now = NOW) =>
  purseOf({
    entry: { cashCents: cents(5_000_000), countedAt: NOW, until: 'weekend', ...entry },
    setup,
    context,
    lots: all,
    books: EMPTY_BOOKS,
    now,
  });

test('a weekend ends with its Sunday, in the store’s time', () => {
  const { lastDay, purse: made } = purse({});
  expect(lastDay).toBe('2026-11-29');
  // Midnight in Idaho in winter is seven in the morning, universal time.
  expect(made.until).toBe(Date.UTC(2026, 10, 30, 7) - 1);
});

test('what was owed when the cash was counted comes off, and paying it later gives nothing back', () => {
  const owed = purse({}, [won(instant(NOW - DAY))]);
  expect(owed.promised.cash).toBeGreaterThan(1_000_000);
  expect(owed.purse.cash).toBe(5_000_000 - owed.promised.cash);
  const paidSince = purse({}, [won(instant(NOW - DAY), instant(NOW + HOUR))], instant(NOW + 2 * HOUR));
  expect(paidSince.promised.cash).toBe(owed.promised.cash);
  // What was paid before had left the bank when it was counted.
  expect(purse({}, [won(instant(NOW - 2 * DAY), instant(NOW - DAY))]).promised.cash).toBe(0);
});

test('a car won since takes all that it costs, recon and transport too, and a place', () => {
  const later = purse({ places: 3 }, [won(instant(NOW + HOUR))], instant(NOW + 2 * HOUR));
  const before = purse({ places: 3 }, [won(instant(NOW - HOUR))]);
  expect(later.promised.cash).toBeGreaterThan(before.promised.cash);
  expect([later.purse.places, before.purse.places]).toEqual([2, 3]);
});

test('dated money before the count is in the cash already; what goes out counts from the morning, what comes in from the evening', () => {
  const day = (date: string, amount: number) => ({ date: date as LocalDate, cents: cents(amount), what: 'x' });
  const { purse: made } = purse({
    moves: [day('2026-11-25', 100), day('2026-11-27', -200), day('2026-11-27', 300)],
  });
  expect(made.flows.map(({ at, cents: amount }) => [new Date(at).toISOString().slice(0, 16), amount])).toEqual([
    ['2026-11-27T07:00', -200],
    ['2026-11-28T01:00', 300],
  ]);
});

test('each thing that is wrong with a purse is a sentence that says what to do', () => {
  const wins = [won(instant(NOW + HOUR)), won(instant(NOW + HOUR))];
  const { faults } = purse(
    { cashCents: cents(100), places: 1, until: '2026-11-20' as LocalDate },
    wins,
    instant(NOW + 2 * HOUR),
  );
  expect(faults).toHaveLength(3);
  expect(faults[0]).toContain('overdrawn');
  expect(faults[1]).toContain('over-full by 1');
  expect(faults[2]).toContain('Set how long the next one is for');
});
