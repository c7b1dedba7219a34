import { carryingSchema } from '../../../src/domain/carrying/carrying-rules.ts';
import type { LotFacts, LotId } from '../../../src/domain/lot/lot.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { ppm } from '../../../src/domain/money/rate.ts';
import type { Result } from '../../../src/domain/sale/result.ts';
import { startingSetup } from '../../../src/domain/setup/starting-setup.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import type { Store } from '../../../src/store/store.ts';
import { foldersOf } from '../../../src/views/books/folders-of.ts';
import { beliefsAtClose } from '../../../src/views/learn/beliefs-at-close.ts';
import { contextsThen, pastLots } from '../../../src/views/learn/past-lots.ts';
import { FEES, phoenix, SALTGRASS } from '../../domain/after-sale/sold-lot.ts';
import { at } from '../../folds/journal-arbitrary.ts';
import { openTestStore, testClock, value } from '../../store/open-test-store.ts';

export const BOISE = zone('America/Boise');
export const SETUP = {
  ...startingSetup(BOISE),
  venues: [{ ...SALTGRASS, transport: { kind: 'flat' as const, cents: cents(35_000) } }],
  ...FEES,
  carrying: carryingSchema.parse({ cashAnnualRatePpm: ppm(100_000), daysToSell: { kind: 'median', days: 40 } }),
};
export const CLOSE = phoenix('2026-11-24T10:00');
export const TODAY = '2027-01-10' as LocalDate;

/** A store that was set up some days before the sale, with its clock. */
export async function learnStore() {
  const clock = testClock(phoenix('2026-11-20T09:00'));
  const store = await openTestStore({ now: clock.now });
  value(await store.saveSetup(SETUP));
  return { store, clock };
}

/** A lot that was watched before its sale, and whose end was noted an hour after it. */
export async function ended(
  { store, clock }: Awaited<ReturnType<typeof learnStore>>,
  result: Result,
  more: LotFacts = {},
): Promise<LotId> {
  clock.set(phoenix('2026-11-21T09:00'));
  const facts: LotFacts = {
    make: 'Larkspur',
    model: 'Hauler',
    venueId: 'saltgrass',
    retail: { low: cents(1_600_000), likely: cents(1_800_000), high: cents(2_000_000) },
    recon: [{ label: 'Tires', amount: { likely: cents(60_000) }, chance: ppm(1_000_000) }],
    ...more,
  };
  const lot = at(value(await store.addLots('typed', [{ facts }])).lots, 0);
  clock.set(CLOSE + 3_600_000);
  value(await store.noteResult(lot, { result, at: CLOSE }));
  return lot;
}

/** Every past lot of a store. */
export async function past(store: Store) {
  const lots = await store.allLots();
  const { folders } = foldersOf(lots, await store.books(), new Map(), SETUP, TODAY);
  const beliefs = beliefsAtClose(await store.entriesOf(lots.map(({ id }) => id)));
  return pastLots(lots, beliefs, folders, contextsThen(BOISE), TODAY);
}
