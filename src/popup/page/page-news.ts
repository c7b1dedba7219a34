import { type LotFacts, lotFactsSchema, lotIdSchema } from '../../domain/lot/lot.ts';
import type { LotState } from '../../folds/lot-state.ts';
import { isSameFact } from '../../folds/same-fact.ts';
import { type EntryId, entryIdSchema } from '../../journal/ids.ts';
import { type AskedChange, askedChangesSchema } from '../../reading/asked-change.ts';
import type { Store } from '../../store/store.ts';

/** The watched lot of the page in front, what opening the page brought up to date, and what it says that is to be checked. */
export interface PageNews {
  readonly lot: LotState;
  readonly refreshed: {
    readonly entry: EntryId;
    readonly was: LotFacts;
    readonly now: LotFacts;
    /** Facts that were read where the user pointed. */
    readonly pointed: ReadonlySet<string>;
  } | null;
  readonly asked: readonly AskedChange[];
}

/** The news that the background has left for this opening of the popup; null when there are none that hold. */
export async function pageNews(store: Store, search: URLSearchParams): Promise<PageNews | null> {
  const id = lotIdSchema.safeParse(search.get('lot'));
  const lot = id.success ? await store.lot(id.data) : null;
  if (lot === null || lot.dropped) return null;
  const questions = askedChangesSchema.safeParse(JSON.parse(search.get('asked') ?? '[]'));
  const asked = (questions.data ?? []).filter(({ field, after }) => !isSameFact(lot.facts[field], after));
  const entry = entryIdSchema.safeParse(search.get('entry'));
  const was = lotFactsSchema.safeParse(JSON.parse(search.get('was') ?? '{}'));
  if (!entry.success || !was.success) return { lot, refreshed: null, asked };
  const items = await store.historyOfLot(lot.id);
  const item = items.find((one) => one.id === entry.data);
  if (item?.counts !== true || item.read.as !== 'known' || item.read.entry.happening.kind !== 'lot-changed') {
    return { lot, refreshed: null, asked };
  }
  const { set: now, evidence } = item.read.entry.happening;
  const pointed = new Set(Object.keys(evidence).filter((field) => evidence[field]?.from === 'pointed'));
  return { lot, refreshed: { entry: entry.data, was: was.data, now, pointed }, asked };
}
