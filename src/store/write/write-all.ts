import { type IDBPObjectStore, type StoreNames, type StoreValue, unwrap } from 'idb';
import type { HeadroomSchema, STORE_NAMES } from '../connection/schema.ts';
import type { Slices } from '../journal/slices.ts';

type WritableStore<Name extends StoreNames<HeadroomSchema>> = IDBPObjectStore<
  HeadroomSchema,
  typeof STORE_NAMES,
  Name,
  'readwrite'
>;

/**
 * Adds many values, and waits for none of them: requests are carried out in order, and one that fails fails the whole
 * transaction. A promise for each would cost as much as the request, and most would have nobody to hear their failure.
 */
export function addAll<Name extends StoreNames<HeadroomSchema>>(
  store: WritableStore<Name>,
  values: Iterable<StoreValue<HeadroomSchema, Name>>,
): void {
  const plain = unwrap(store);
  for (const value of values) plain.add(value);
}

/** As addAll, for so many that the page wants to draw meanwhile. */
export async function addInSlices<Name extends StoreNames<HeadroomSchema>>(
  store: WritableStore<Name>,
  values: Iterable<StoreValue<HeadroomSchema, Name>>,
  slices: Slices,
): Promise<void> {
  const plain = unwrap(store);
  for (const value of values) {
    plain.add(value);
    if (slices.took()) await slices.turn();
  }
}

/** Puts these values in the place of all that a store holds. As addAll. */
export function replaceAll<Name extends StoreNames<HeadroomSchema>>(
  store: WritableStore<Name>,
  values: Iterable<StoreValue<HeadroomSchema, Name>>,
): void {
  unwrap(store).clear();
  addAll(store, values);
}
