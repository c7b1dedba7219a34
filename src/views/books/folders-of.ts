import { venuePlaces } from '../../domain/after-sale/venue-place.ts';
import { attempt } from '../../domain/attempt.ts';
import { type ExpectedPurchase, expectedPurchase, nothingExpected } from '../../domain/books/folder/expected.ts';
import { type FolderSource, type PurchaseFolder, purchaseFolder } from '../../domain/books/folder/folder.ts';
import type { LotId } from '../../domain/lot/lot.ts';
import type { Setup } from '../../domain/setup/setup.ts';
import { wholeSetup } from '../../domain/setup/starting-setup.ts';
import type { LocalDate } from '../../domain/time/local-date.ts';
import { dateIn } from '../../domain/time/wall-clock.ts';
import { type PricingContext, pricingContext } from '../../domain/worksheet/pricing-context.ts';
import { byLot } from '../../folds/by-lot.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { EntryId } from '../../journal/ids.ts';
import type { BooksState } from '../../journal/states/books-state.ts';
import type { Belief } from '../belief-at.ts';
import { eachLot, type LotApart } from '../lots-apart.ts';
import { bookedLots } from '../sold/booked-lot.ts';
import { afterSaleOf, hasMoneyNoted } from './after-sale-of.ts';

/** What was believed at each win, by the result's entry: it never changes, so it is worked out once. */
export type ExpectedByWin = ReadonlyMap<EntryId, ExpectedPurchase>;

/** Whether a lot has a folder: it was won, or there is money to book for it. */
export const hasFolder = (lot: LotState, booked: ReadonlySet<LotId>): boolean =>
  lot.sale?.result?.result.ended === 'won' || booked.has(lot.id) || hasMoneyNoted(lot);

/** The lots that anything was booked for. */
export function lotsInBooks({ costs, payments, floor, outcomes }: BooksState): ReadonlySet<LotId> {
  return new Set([...costs, ...payments, ...floor, ...outcomes.values()].map(({ lot }) => lot));
}

export interface Folders {
  /** The latest win first. */
  readonly folders: readonly PurchaseFolder[];
  /** Lots whose folder can't be worked out. */
  readonly apart: readonly LotApart[];
}

/** Every purchase folder. */
export function foldersOf(
  lots: readonly LotState[],
  books: BooksState,
  expected: ExpectedByWin,
  setup: Setup,
  today: LocalDate,
): Folders {
  const booked = lotsInBooks(books);
  const costs = byLot(books.costs);
  const payments = byLot(books.payments);
  const floor = byLot(books.floor);
  const papers = byLot(books.papers.filter(({ paper }) => paper !== 'title'));
  const bookedOf = bookedLots(books, setup.store.zone);
  const placeOf = venuePlaces(setup);
  const sourceOf = (lot: LotState): FolderSource => {
    const result = lot.sale?.result;
    const own = costs.get(lot.id) ?? [];
    const after = afterSaleOf(lot, bookedOf(lot.id, lot.facts), own, setup, placeOf(lot.facts));
    const won = result?.result.ended === 'won' ? { ...result, hammer: result.result.hammerCents } : null;
    return {
      lot: lot.id,
      facts: lot.facts,
      won: won && { hammer: won.hammer, date: dateIn(setup.store.zone, won.at), bidder: won.bidder },
      expected: (won && expected.get(won.entry)) ?? null,
      costs: own,
      payments: [...(payments.get(lot.id) ?? []), ...after.payments],
      floor: floor.get(lot.id) ?? [],
      outcome: books.outcomes.get(lot.id),
      papers: [...after.papers, ...(papers.get(lot.id) ?? [])],
      arrivedOn: after.arrivedOn,
      notBilled: after.notBilled,
      settlements: after.settlements,
      undoneOn: after.undoneOn,
    };
  };
  const { done, apart } = eachLot(
    lots.filter((lot) => hasFolder(lot, booked)),
    (lot) => purchaseFolder(sourceOf(lot), today),
  );
  return { folders: done.toSorted((a, b) => ((a.won?.date ?? '') < (b.won?.date ?? '') ? 1 : -1)), apart };
}

/** Works out what was expected at each win; setups that are the same share one context. */
export function expectedAt(
  wins: readonly { readonly lot: LotState; readonly belief: Belief }[],
  zone: Setup['store']['zone'],
): Map<EntryId, ExpectedPurchase> {
  const contextOf = contextsUnder(zone);
  const found = new Map<EntryId, ExpectedPurchase>();
  for (const { lot, belief } of wins) {
    const result = lot.sale?.result;
    if (result?.result.ended !== 'won') continue;
    const { entry, result: ended } = result;
    const expected = attempt(() => expectedPurchase(belief.facts, contextOf(belief.setup), ended.hammerCents));
    found.set(entry, expected.ok ? expected.value : nothingExpected(expected.message));
  }
  return found;
}

/** Most wins share the very object of the wins before them; to compare two setups takes as long as a deal. */
function contextsUnder(zone: Setup['store']['zone']): (setup: Belief['setup']) => PricingContext {
  const same = new Map<Belief['setup'], PricingContext>();
  const alike = new Map<string, PricingContext>();
  return (setup) => {
    const known = same.get(setup);
    if (known !== undefined) return known;
    const name = JSON.stringify(setup);
    const context = alike.get(name) ?? pricingContext(wholeSetup(setup, zone));
    alike.set(name, context);
    same.set(setup, context);
    return context;
  };
}
