/**
 * One step from a database version to the next.
 *
 * - A step that shipped is never edited; the next change is a new file with the next number.
 * - It only adds where it can. The name of a store or index that was removed is never used again.
 * - It is synchronous: an upgrade that fails after a wait would leave a half-made database that calls itself new.
 *   What needs reading (new views of old entries) is done by raising FOLD_VERSION, not here.
 * - It speaks to the browser's own IDBDatabase, because the types of today's schema do not hold for yesterday's.
 */
export interface Migration {
  readonly number: number;
  readonly name: string;
  up(database: IDBDatabase, transaction: IDBTransaction): void;
}
