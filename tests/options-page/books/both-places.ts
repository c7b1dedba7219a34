import { STARTING_BOOKKEEPING } from '../../../src/domain/accounts/accounts.ts';
import { venuePlaces } from '../../../src/domain/after-sale/venue-place.ts';
import { winMoney } from '../../../src/domain/after-sale/win-money.ts';
import type { Month } from '../../../src/domain/books/month.ts';
import { balances } from '../../../src/domain/books/post/post-months.ts';
import type { LotId } from '../../../src/domain/lot/lot.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { startingSetup } from '../../../src/domain/setup/starting-setup.ts';
import type { LocalDate } from '../../../src/domain/time/local-date.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import type { Happening } from '../../../src/journal/happening.ts';
import type { Store } from '../../../src/store/store.ts';
import { foldersOf } from '../../../src/views/books/folders-of.ts';
import { postedBooks } from '../../../src/views/books/posted-books.ts';
import { bookedLots } from '../../../src/views/sold/booked-lot.ts';
import { soldLotOf } from '../../../src/views/sold/sold-lot.ts';
import { FEES, phoenix, SALTGRASS } from '../../domain/after-sale/sold-lot.ts';
import { at } from '../../folds/journal-arbitrary.ts';
import { value } from '../../store/open-test-store.ts';

export const SETUP = { ...startingSetup(zone('America/Boise')), venues: [SALTGRASS], ...FEES };
export const DAY = '2026-11-27' as LocalDate;
export const VENUE = 'Saltgrass';

/** Won for $12,400; with fees the venue is owed $12,824. */
export async function wonLot(store: Store): Promise<LotId> {
  const facts = { make: 'Larkspur', venueId: 'saltgrass', venueName: VENUE };
  const lot = at(value(await store.addLots('typed', [{ facts }])).lots, 0);
  const result = { ended: 'won' as const, hammerCents: cents(1_240_000) };
  value(await store.noteResult(lot, { result, at: phoenix('2026-11-24T10:00') }));
  return lot;
}

/** What both places say of a lot: under To do, and in its folder. */
export async function bothOf(store: Store, id: LotId) {
  const [lot, books] = [await store.lot(id), await store.books()];
  if (lot === null) throw new Error('the lot is gone');
  const place = venuePlaces(SETUP)(lot.facts);
  const sold = soldLotOf(lot, bookedLots(books, SETUP.store.zone)(lot.id, lot.facts));
  const money = winMoney(sold, SETUP, place);
  if (money === undefined) throw new Error('it was won');
  const folders = foldersOf([lot], books, new Map(), SETUP, DAY);
  const folder = at(folders.folders, 0);
  const posted = postedBooks(folders, books, STARTING_BOOKKEEPING, '2026-10' as Month);
  return {
    sold,
    folder,
    money,
    toDo: cents(money.toPay - money.toComeBack + money.others),
    balance: balances(posted.transactions),
  };
}

export const paid = (amount?: number, at = phoenix('2026-11-25T09:00')): Happening => ({
  kind: 'step-noted',
  step: 'pay',
  done: true,
  at,
  ...(amount !== undefined && { cents: cents(amount) }),
});
