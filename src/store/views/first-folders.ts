import { unwrap } from 'idb';
import type { LotId } from '../../domain/lot/lot.ts';
import type { Instant } from '../../domain/time/instant.ts';
import { foldBooks } from '../../folds/fold-books.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { Envelope } from '../../journal/read-entry.ts';
import type { BooksState } from '../../journal/states/books-state.ts';
import type { SetupState } from '../../journal/states/setup-state.ts';
import { BOOKS } from '../../journal/subject.ts';
import type { Belief } from '../../views/belief-at.ts';
import type { ReadTransaction, WriteTransaction } from '../connection/schema.ts';
import type { Session } from '../write/session.ts';
import { beliefsIn } from './books.ts';
import { known } from './refold.ts';

/** The cars that were won last, and all that the words of their folders depend on. */
export interface LatestWins {
  readonly setup: SetupState;
  /** The latest win first. */
  readonly lots: readonly LotState[];
  /** What is booked for these lots; other lots, the bank and closed months are left out. */
  readonly books: BooksState;
  readonly beliefs: ReadonlyMap<LotId, Belief>;
}

export interface FirstFoldersOptions {
  /** Which Headroom the words are of; no other one will show them. */
  readonly build: string;
  readonly limit: number;
  /** The rows in words and until when they hold, or null when they are not worth keeping. */
  readonly inWords: (latest: LatestWins) => { readonly rows: readonly unknown[]; readonly until: Instant } | null;
}

/**
 * Keeps the first rows of the purchase folders in words, as `keepFirstRows` does for the list: adding up the books of some
 * years takes seconds. They are forgotten in the transaction that books something, changes the setup or a lot that was
 * won. Gives whether they were kept.
 */
export async function keepFirstFolders(
  session: Session,
  { build, limit, inWords }: FirstFoldersOptions,
): Promise<boolean> {
  const seen = await session.connection.read(async (tx) => ({
    latest: await latestWins(tx, limit),
    at: await placeIn(tx),
  }));
  const words = inWords(seen.latest);
  if (words === null) return false;
  return session.connection.write(async (tx) => {
    if ((await placeIn(tx)) !== seen.at) return false;
    await tx.objectStore('meta').put({ build, ...words }, 'first-folders');
    return true;
  });
}

/** Waits for nothing: should it fail, the whole transaction does. */
export function forgetFirstFolders(tx: WriteTransaction): void {
  unwrap(tx.objectStore('meta')).delete('first-folders');
}

/** Another one after whatever is written to the journal. */
async function placeIn(tx: ReadTransaction): Promise<string> {
  const [count, head] = await Promise.all([tx.objectStore('entries').count(), tx.objectStore('meta').get('head')]);
  return `${count} ${JSON.stringify(head)}`;
}

async function latestWins(tx: ReadTransaction, limit: number): Promise<LatestWins> {
  const [setup = null, won, booked] = await Promise.all([
    tx.objectStore('setup').get('sections'),
    tx.objectStore('lots').index('ended').getAll('won'),
    tx.objectStore('entries').index('subject').getAll(BOOKS),
  ]);
  const lots = won.sort((a, b) => wonAt(b) - wonAt(a)).slice(0, limit);
  const ids = new Set<string>(lots.map(({ id }) => id));
  const books = foldBooks(known(booked.filter((entry) => isAbout(entry, ids))));
  const wins = lots.flatMap(({ id, sale }) => (sale?.result === undefined ? [] : { lot: id, at: sale.result.entry }));
  return { setup, lots, books, beliefs: await beliefsIn(tx, wins) };
}

const wonAt = ({ sale }: LotState): number => sale?.result?.at ?? 0;

/** Whether an entry may book something for one of these lots. Before it is read, which takes most of the time. */
function isAbout({ happening }: Envelope, lots: ReadonlySet<string>): boolean {
  if (happening.kind === 'undone') return true;
  if (happening.kind === 'month-closed') return false;
  const { lot, lines, costs, payments } = happening as Partial<Record<'lot' | 'lines' | 'costs' | 'payments', unknown>>;
  if (typeof lot === 'string' && lots.has(lot)) return true;
  return [lines, costs, payments].some(
    (some) => Array.isArray(some) && some.some((line: { readonly lot?: string } | string) => isFor(line, lots)),
  );
}

const isFor = (line: { readonly lot?: string } | string, lots: ReadonlySet<string>): boolean =>
  typeof line === 'object' && lots.has(line.lot ?? '');
