import type { DeviceId } from '../../journal/ids.ts';
import type { Stored, Witness } from '../../journal/witness.ts';
import type { ReadTransaction, StoredSighting } from '../connection/schema.ts';

/** Of each device, the first and the last of the entries that a pack is about. */
export type AboutNumbers = ReadonlyMap<DeviceId, { readonly first: number; readonly last: number }>;

/**
 * What the server of a team and its devices said of such entries; null where nobody did. Of each device that saw them, the
 * first time that it had them all, and whatever it saw that is not what is here.
 */
export async function witnessOf(tx: ReadTransaction, about: AboutNumbers): Promise<Witness | null> {
  const stored: Stored[] = [];
  for (const [device, { first, last }] of about) {
    const rows = await tx
      .objectStore('stored')
      .getAll(IDBKeyRange.bound([device, first], [device, Number.POSITIVE_INFINITY]));
    stored.push(...rows.filter((row) => row.first <= last));
  }
  const sightings = (await tx.objectStore('sightings').getAll())
    .filter((row) => row.heads.some(({ device, sequence }) => sequence >= (about.get(device)?.last ?? Infinity)))
    .sort((a, b) => a.place - b.place);
  const firsts = new Map<string, StoredSighting>();
  for (const row of sightings) {
    const seen = row.heads.filter(({ device, sequence }) => sequence >= (about.get(device)?.last ?? Infinity));
    for (const { device } of seen) if (!firsts.has(`${row.by} ${device}`)) firsts.set(`${row.by} ${device}`, row);
    if (row.open !== undefined) firsts.set(row.id, row);
  }
  if (stored.length === 0 && firsts.size === 0) return null;
  const chosen = new Set(firsts.values());
  return {
    stored,
    sightings: [...chosen].map(({ by, publicKey, at, heads, signature }) => ({ by, publicKey, at, heads, signature })),
  };
}
