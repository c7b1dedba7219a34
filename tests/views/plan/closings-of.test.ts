import { expect, test } from 'vitest';
import { demoScenario } from '../../../src/demo/demo-scenario.ts';
import type { LotId } from '../../../src/domain/lot/lot.ts';
import { readingOf } from '../../../src/domain/market/reading.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import type { Result } from '../../../src/domain/sale/result.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { pricingContext } from '../../../src/domain/worksheet/pricing-context.ts';
import type { LotState } from '../../../src/folds/lot-state.ts';
import type { EntryId } from '../../../src/journal/ids.ts';
import { closingsOf, keptClosing, lotsThatClosed } from '../../../src/views/plan/closings-of.ts';

const NOW = instant(Date.UTC(2026, 10, 26, 17));
const { setup, lots } = demoScenario(NOW, () => '' as LotId);
const context = pricingContext(setup);
const facts = lots[3]?.facts ?? {};

function lot(result: Result | undefined, more: Partial<LotState> = {}, noted: { bidWasIn?: boolean } = {}): LotState {
  const entry = 'E' as EntryId;
  return {
    id: 'L' as LotId,
    facts: { ...facts, proxy: undefined as never },
    evidence: {},
    source: 'typed',
    addedAt: NOW,
    changedAt: NOW,
    dropped: false,
    bornIn: entry,
    ...(result !== undefined && {
      sale: { bids: [], result: { result, at: NOW, entry, notedAt: NOW, author: 'buyer', ...noted } },
    }),
    bidding: {
      prices: [],
      bids: [{ action: 'proxy-placed', cents: cents(900_000), at: instant(NOW - 1000), by: 'buyer' }],
      accepted: [],
    },
    ...more,
  };
}

const closing = (one: LotState) => {
  const [there] = lotsThatClosed([one]);
  return there && closingsOf([keptClosing(there, { facts, context })], NOW).closings[0];
};

test('unknown prices and no-sales are kept as what they say: the strongest rival was above our bid', () => {
  expect(closing(lot({ ended: 'lost' }))).toMatchObject({ ending: { was: 'lost-unknown' }, bid: 900_000 });
  const noSale = closing(lot({ ended: 'not-sold', highCents: cents(950_000) }));
  expect(noSale).toMatchObject({ ending: { was: 'no-sale', high: 950_000 } });
  expect(noSale && readingOf(noSale)?.says).toBe('strongest-above');
});

test('a lost price is the second price, and a win’s is one step above the strongest rival', () => {
  const lost = closing(lot({ ended: 'lost', hammerCents: cents(1_500_000) }));
  expect(lost && readingOf(lost)?.says).toBe('second-at');
  const won = closing(lot({ ended: 'won', hammerCents: cents(1_000_000) }));
  expect(won && readingOf(won)?.says).toBe('strongest-at');
  expect(won?.step).toBeGreaterThan(0);
});

test('a bid that was not in set no price', () => {
  expect(closing(lot({ ended: 'lost', hammerCents: cents(800_000) }, {}, { bidWasIn: false }))).not.toHaveProperty(
    'bid',
  );
});

test('what says nothing of others is left out: withdrawn, pending, unseen, or still open', () => {
  for (const one of [
    lot({ ended: 'withdrawn' }),
    lot({ ended: 'pending' }),
    lot({ ended: 'not-watched' }),
    lot(undefined),
  ])
    expect(lotsThatClosed([one])).toEqual([]);
});

test('bids that were handed in unseen say what rivals bid there: without a price only that one was above ours', () => {
  const sealed = { facts: { ...facts, sealed: {} } };
  expect(closing(lot({ ended: 'lost' }, sealed))).toMatchObject({ sealed: true, group: { venue: 'sealed' } });
});

test('a venue with closings enough is a group of its own, the others of a title are one', () => {
  const of = (venueId: string, count: number, titleId = 'clean') =>
    Array.from({ length: count }, () => {
      const [there] = lotsThatClosed([
        lot({ ended: 'lost', hammerCents: cents(1_000_000) }, { facts: { venueId, titleId } }),
      ]);
      if (there === undefined) throw new Error('it closed');
      return keptClosing(there, { facts, context });
    });
  const { groupOf } = closingsOf([...of('saguaro', 20), ...of('fogline', 19), ...of('fogline', 25, 'rebuilt')], NOW);
  expect(groupOf({ venueId: 'saguaro', titleId: 'clean' }).venue).toBe('saguaro');
  expect(groupOf({ venueId: 'fogline', titleId: 'clean' }).venue).toBe('');
  expect(groupOf({ venueId: 'fogline', titleId: 'rebuilt' })).toMatchObject({ venue: 'fogline', title: 'rebuilt' });
});
