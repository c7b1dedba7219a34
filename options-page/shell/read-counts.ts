import type { Setup } from '../../src/domain/setup/setup.ts';
import { type Instant, instant } from '../../src/domain/time/instant.ts';
import { dateIn } from '../../src/domain/time/wall-clock.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import type { Store } from '../../src/store/store.ts';
import { type AfterLot, afterLotsUnder } from '../../src/views/after-sale/after-lot.ts';
import { dueBillsOf } from '../../src/views/books/due-bills.ts';
import { mondayList } from '../../src/views/books/monday-list.ts';
import { type ScreenCounts, screenCounts } from '../../src/views/counts/screen-counts.ts';
import { eachLot } from '../../src/views/lots-apart.ts';
import { bookedLots } from '../../src/views/sold/booked-lot.ts';

/** As many lots as are worked out at a time, so that a key that is pressed meanwhile is heard at once. */
const AT_A_TIME = 100;

/** Reads what was won or disputed, and says how much waits there and among the lots in memory at any moment. */
export async function readCounts(
  store: Store,
  setup: Setup,
  lots: readonly LotState[],
): Promise<(now: Instant) => ScreenCounts> {
  const [sold, books] = await Promise.all([store.lotsAfterSale(), store.books()]);
  const workOut = afterLotsUnder(setup, bookedLots(books, setup.store.zone), instant(Date.now()));
  const after: AfterLot[] = [];
  for (let from = 0; from < sold.length; from += AT_A_TIME) {
    after.push(...eachLot(sold.slice(from, from + AT_A_TIME), workOut).done);
    await new Promise((resolve) => setTimeout(resolve));
  }
  const { zone } = setup.store;
  const { bills } = dueBillsOf(sold, books, setup, dateIn(zone, instant(Date.now())));
  const open = { watched: lots, after, books, bills, zone, certificates: setup.certificates ?? [] };
  return (now) => screenCounts(lots, after, mondayList(open, now), now);
}
