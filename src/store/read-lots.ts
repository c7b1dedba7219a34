import type { LotId } from '../domain/lot/lot.ts';
import type { Instant } from '../domain/time/instant.ts';
import type { LotState } from '../journal/lot-state.ts';
import type { Session } from './session.ts';

export interface ByCloseOptions {
  /** The earliest close wanted; from the first of all when left out. */
  readonly from?: Instant;
  /** Closes before this. */
  readonly before?: Instant;
  readonly limit?: number;
}

/** How many rows one request asks for: enough to be quick, few enough for what a browser sends in one message. */
const PAGE = 5_000;

/** Lots that are watched and have a close, the soonest first. */
export function lotsByClose(session: Session, { from, before, limit = Infinity }: ByCloseOptions): Promise<LotState[]> {
  return session.connection.read(async (tx) => {
    const index = tx.objectStore('lots').index('close');
    const found: LotState[] = [];
    let cursor = await index.openCursor(closesBetween(from, before));
    while (cursor !== null && found.length < limit) {
      if (!cursor.value.dropped) found.push(cursor.value);
      cursor = await cursor.continue();
    }
    return found;
  });
}

function closesBetween(from: Instant | undefined, before: Instant | undefined): IDBKeyRange | null {
  if (from !== undefined && before !== undefined)
    return from < before ? IDBKeyRange.bound(from, before, false, true) : IDBKeyRange.only(-1);
  if (from !== undefined) return IDBKeyRange.lowerBound(from);
  return before === undefined ? null : IDBKeyRange.upperBound(before, true);
}

/** Every lot, dropped ones too, in the order in which they came in. */
export function allLots(session: Session): Promise<LotState[]> {
  return session.connection.read(async (tx) => {
    const store = tx.objectStore('lots');
    const found: LotState[] = [];
    let after: LotId | undefined;
    for (;;) {
      const range = after === undefined ? null : IDBKeyRange.lowerBound(after, true);
      const page = await store.getAll(range, PAGE);
      for (const lot of page) found.push(lot);
      after = page.at(-1)?.id;
      if (page.length < PAGE) return found;
    }
  });
}

export function lotsByVin(session: Session, vin: string): Promise<LotState[]> {
  return session.connection.read((tx) => tx.objectStore('lots').index('vin').getAll(vin));
}

export function lot(session: Session, id: LotId): Promise<LotState | null> {
  return session.connection.read(async (tx) => (await tx.objectStore('lots').get(id)) ?? null);
}
