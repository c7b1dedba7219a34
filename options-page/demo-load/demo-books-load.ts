import { type DemoWin, demoBooks } from '../../src/demo/demo-books.ts';
import { NEW_BOOKKEEPING } from '../../src/domain/accounts/accounts.ts';
import { firstDayOf, monthBefore, monthOf } from '../../src/domain/books/month.ts';
import { toClose } from '../../src/domain/books/post/post-months.ts';
import type { LotId } from '../../src/domain/lot/lot.ts';
import { cents } from '../../src/domain/money/cents.ts';
import type { Setup } from '../../src/domain/setup/setup.ts';
import type { Instant } from '../../src/domain/time/instant.ts';
import { dateIn } from '../../src/domain/time/wall-clock.ts';
import type { Store } from '../../src/store/store.ts';
import { foldersOf } from '../../src/views/books/folders-of.ts';
import { postedBooks } from '../../src/views/books/posted-books.ts';

/**
 * Books what the invented bookkeeper has done so far with the demo's wins. Null when all went well, else why not.
 * @param done lots of which everything is booked already
 */
export async function loadDemoBooks(
  store: Store,
  setup: Setup,
  now: Instant,
  done: ReadonlySet<LotId> = new Set(),
): Promise<string | null> {
  const { zone } = setup.store;
  const today = dateIn(zone, now);
  const lots = await store.allLots();
  const wins = lots
    .flatMap(({ id, facts, sale }): DemoWin[] => {
      const noted = sale?.result;
      if (noted?.result.ended !== 'won' || done.has(id)) return [];
      return [{ lot: id, facts, hammer: noted.result.hammerCents, day: dateIn(zone, noted.at) }];
    })
    .sort((a, b) => (a.day < b.day ? -1 : 1));
  const [oldest] = wins;
  if (oldest === undefined) return null;
  const booked = await store.book(...demoBooks(wins, setup, today));
  if (!booked.ok) return booked.message;

  // The month before this one, where the oldest win falls into it, and a bill of it that came too late.
  const state = await store.books();
  const month = monthBefore(monthOf(today));
  const posted = postedBooks(foldersOf(lots, state, new Map(), setup, today), state, NEW_BOOKKEEPING, month);
  const transactions = toClose(posted, month);
  if (transactions.length === 0) return null;
  const closed = await store.book(
    { kind: 'month-closed', month, by: 'The bookkeeper', transactions },
    {
      kind: 'costs-booked',
      date: oldest.day < firstDayOf(monthOf(today)) ? oldest.day : firstDayOf(month),
      paid: 'bank',
      payee: 'Auction',
      lines: [{ lot: oldest.lot, cost: 'fee', label: 'Storage', cents: cents(6000) }],
    },
  );
  return closed.ok ? null : closed.message;
}
