import { unwrap } from 'idb';
import type { LotId } from '../../domain/lot/lot.ts';
import type { Instant } from '../../domain/time/instant.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { SetupState } from '../../journal/states/setup-state.ts';
import type { PlannedBids } from '../../views/lots/planned-bids.ts';
import { PLAN_VERSION, plannedBids } from '../../views/plan/kept-plan.ts';
import type { ReadTransaction, WriteTransaction } from '../connection/schema.ts';
import type { Session } from '../write/session.ts';
import { planIn } from './plan-in.ts';

/** What the first rows of the list say, and all that their words depend on. */
export interface NextLots {
  readonly setup: SetupState;
  readonly planned: PlannedBids;
  /** Watched lots, the next to close first. */
  readonly lots: readonly LotState[];
  /** Other lots of the same cars, dropped ones too. */
  readonly sameCars: readonly LotState[];
}

export interface FirstRowsOptions {
  /** Which Headroom the words are of; no other one will show them. */
  readonly build: string;
  readonly from: Instant;
  readonly limit: number;
  /** The rows in words, or null when they are not worth keeping. It may take its time. */
  readonly inWords: (next: NextLots) => Promise<readonly unknown[] | null>;
}

/**
 * Keeps the first rows of the list in words, so that the page can show them before it can work anything out. They are
 * forgotten in the same transaction in which a lot or the setup changes, so whatever is found is what the views say;
 * rows that were overtaken while they were put into words are not kept. Gives whether they were.
 */
export async function keepFirstRows(
  session: Session,
  { build, from, limit, inWords }: FirstRowsOptions,
): Promise<boolean> {
  const seen = await session.connection.read((tx) => nextLots(tx, from, limit));
  const rows = await inWords(seen);
  if (rows === null) return false;
  return session.connection.write(async (tx) => {
    if (JSON.stringify(await nextLots(tx, from, limit)) !== JSON.stringify(seen)) return false;
    await tx.objectStore('meta').put({ build, rows }, 'first-rows');
    return true;
  });
}

/** Waits for nothing: should it fail, the whole transaction does. */
export function forgetFirstRows(tx: WriteTransaction): void {
  unwrap(tx.objectStore('meta')).delete('first-rows');
}

async function nextLots(tx: ReadTransaction, from: Instant, limit: number): Promise<NextLots> {
  const store = tx.objectStore('lots');
  const byClose = store.index('close').getAll(IDBKeyRange.lowerBound(from), 2 * limit);
  const setup = (await tx.objectStore('setup').get('sections')) ?? null;
  const planned = plannedBids(await planIn(tx, PLAN_VERSION));
  const lots = (await byClose).filter(({ dropped }) => !dropped).slice(0, limit);
  const shown = new Set<LotId>(lots.map(({ id }) => id));
  const vins = new Set(lots.flatMap(({ facts }) => facts.vin ?? []));
  const cars = await Promise.all([...vins].map((vin) => store.index('vin').getAll(vin)));
  return { setup, planned, lots, sameCars: cars.flat().filter(({ id }) => !shown.has(id)) };
}
