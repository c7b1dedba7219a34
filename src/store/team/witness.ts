import { HOUR } from '../../domain/time/units.ts';
import type { ChainHead } from '../../journal/chain-head.ts';
import type { ReadTransaction, StoredSighting, WriteTransaction } from '../connection/schema.ts';
import type { Arrived } from './take-in.ts';

/**
 * Keeps beside the journal what the server said of messages, the first time that it said it, and what their devices had of
 * the others. Tells where what one device saw is not what is here: then one of the two chains was written anew.
 */
export async function keepWitness(tx: WriteTransaction, arrived: readonly Arrived[]): Promise<readonly string[]> {
  const store = tx.objectStore('stored');
  const here = await Promise.all(arrived.map(({ stored }) => store.getKey([stored.device, stored.last])));
  for (const [i, { stored }] of arrived.entries()) if (here[i] === undefined) await store.put(stored);
  const told: string[] = [];
  const isFresh = arrived.some(({ entries }) => entries.length > 0);
  for (const row of isFresh ? await openOnes(tx) : []) told.push(...(await keep(tx, row)));
  for (const { sighting, stored } of arrived) {
    if (sighting === null) continue;
    const id = `${sighting.by} ${sighting.at}`;
    told.push(...(await keep(tx, { ...sighting, id, place: stored.place, storedAt: stored.at })));
  }
  return told;
}

const openOnes = (tx: ReadTransaction): Promise<StoredSighting[]> => tx.objectStore('sightings').index('open').getAll();

/** Keeps a sighting, the first of each hour and the last; all of those that do not fit what is here. */
async function keep(tx: WriteTransaction, { open, ...row }: StoredSighting): Promise<readonly string[]> {
  const store = tx.objectStore('sightings');
  const places = await Promise.all(row.heads.map((head) => hashAt(tx, head)));
  const differ = row.heads.filter((head, i) => places[i] !== undefined && places[i] !== head.hash);
  const isOpen = differ.length > 0 || places.includes(undefined);
  if (isOpen) {
    await store.put({ ...row, open: 1 });
    // What was told when it came is not told with every message after it.
    return open === undefined || differ.length > 0 ? differ.map((head) => sayDiffers(row, head)) : [];
  }
  if (open !== undefined) await store.delete(row.id);
  const hour = `${row.by} hour ${Math.floor(row.at / HOUR)}`;
  if ((await store.getKey(hour)) === undefined) await store.put({ ...row, id: hour });
  const last = await store.get(`${row.by} last`);
  if (last === undefined || last.place < row.place) await store.put({ ...row, id: `${row.by} last` });
  return [];
}

async function hashAt(tx: ReadTransaction, { device, sequence }: ChainHead): Promise<string | undefined> {
  return (await tx.objectStore('entries').index('sequence').get([device, sequence]))?.hash;
}

const sayDiffers = ({ by, place }: StoredSighting, { device, sequence }: ChainHead): string =>
  `Device ${by} had another entry as number ${sequence} of device ${device} when it wrote message ${place}: one of the two chains was rewritten. Compare with a backup from before.`;
