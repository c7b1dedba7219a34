import type { LotId } from '../../domain/lot/lot.ts';
import type { Instant } from '../../domain/time/instant.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { Session } from '../write/session.ts';

export interface ByCloseOptions {
  /** The earliest close wanted; from the first of all when left out. */
  readonly from?: Instant;
  /** Closes before this. */
  readonly before?: Instant;
  readonly limit?: number;
}

/** How many rows one request asks for: enough to be quick, few enough for what a browser sends in one message. */
const PAGE = 5_000;

/** With all lots the page goes on being used meanwhile: what one request brings is unpacked in one go. */
const ALL_PAGE = 1_000;

/** Lots that are watched and have a close, the soonest first. */
export function lotsByClose(session: Session, { from, before, limit = Infinity }: ByCloseOptions): Promise<LotState[]> {
  return session.connection.read(async (tx) => {
    const index = tx.objectStore('lots').index('close');
    const found = new Map<LotId, LotState>();
    let [start, most] = [from, Math.min(limit, PAGE)];
    for (;;) {
      const page = await index.getAll(closesBetween(start, before), most);
      for (const lot of page) if (!lot.dropped) found.set(lot.id, lot);
      const last = page.at(-1)?.facts.close?.instant;
      if (page.length < most || last === undefined || found.size >= limit) return [...found.values()].slice(0, limit);
      // The next page begins with the close that this one ended in, which more lots may share than one page holds.
      if (last === start) most *= 2;
      else start = last;
    }
  });
}

function closesBetween(from: Instant | undefined, before: Instant | undefined): IDBKeyRange | null {
  if (from !== undefined && before !== undefined)
    return from < before ? IDBKeyRange.bound(from, before, false, true) : IDBKeyRange.only(-1);
  if (from !== undefined) return IDBKeyRange.lowerBound(from);
  return before === undefined ? null : IDBKeyRange.upperBound(before, true);
}

/** Lots that are watched and whose close is in doubt, and that may close between these moments though they are known under another. */
export function lotsInDoubt(session: Session, from: Instant, before: Instant): Promise<LotState[]> {
  return session.connection.read(async (tx) => {
    // Lots with several readings in the range come several times.
    const found = await tx.objectStore('lots').index('otherwise').getAll(closesBetween(from, before));
    return [...new Map(found.filter(({ dropped }) => !dropped).map((lot) => [lot.id, lot])).values()];
  });
}

/** Every lot, dropped ones too, in the order in which they came in. */
export function allLots(session: Session): Promise<LotState[]> {
  return session.connection.read(async (tx) => {
    const store = tx.objectStore('lots');
    const found: LotState[] = [];
    let after: LotId | undefined;
    for (;;) {
      const range = after === undefined ? null : IDBKeyRange.lowerBound(after, true);
      const page = await store.getAll(range, ALL_PAGE);
      for (const lot of page) found.push(lot);
      after = page.at(-1)?.id;
      if (page.length < ALL_PAGE) return found;
    }
  });
}

export function lotsByVin(session: Session, vin: string): Promise<LotState[]> {
  return session.connection.read((tx) => tx.objectStore('lots').index('vin').getAll(vin));
}

/** Lots about which there is or was a dispute. */
export function disputedLots(session: Session): Promise<LotState[]> {
  return session.connection.read((tx) => tx.objectStore('lots').index('disputed').getAll());
}

/** Lots that were won or are or were disputed, dropped ones too, in the order in which they came in. */
export function lotsAfterSale(session: Session): Promise<LotState[]> {
  return session.connection.read(async (tx) => {
    const lots = tx.objectStore('lots');
    const [won, disputed] = await Promise.all([lots.index('ended').getAll('won'), lots.index('disputed').getAll()]);
    const byId = new Map([...won, ...disputed].map((lot) => [lot.id, lot]));
    return [...byId.values()].sort((a, b) => (a.id < b.id ? -1 : 1));
  });
}

export function lot(session: Session, id: LotId): Promise<LotState | null> {
  return session.connection.read(async (tx) => (await tx.objectStore('lots').get(id)) ?? null);
}
