import type { Refusal } from '../../domain/outcome.ts';
import { lotsBornIn } from '../../folds/fold-lots.ts';
import { canonicalJson } from '../../journal/canonical-json.ts';
import type { DeviceId } from '../../journal/ids.ts';
import type { Envelope } from '../../journal/read-entry.ts';
import { type ChainEnd, checkLinks } from '../../journal/verify-chain.ts';
import { conflictsWith } from '../backup/conflicts.ts';
import type { WriteTransaction } from '../connection/schema.ts';
import { known } from '../views/refold.ts';
import { lastIdOf, lastOf } from '../write/head.ts';
import { Refused } from '../write/refused.ts';
import type { UndosSeen } from './undos-seen.ts';

const END = 'None of this message was taken in.';
const CONFLICT = conflictsWith({ there: 'in what the team sent', end: END });

/** Those that are not here. @throws Refused when they can't be of one journal with what is */
export async function newOf(
  tx: WriteTransaction,
  entries: readonly Envelope[],
  undos: UndosSeen,
): Promise<readonly Envelope[]> {
  const fresh = await notHere(tx, entries);
  const ids = new Set<string>();
  for (const raw of fresh) {
    if (ids.has(raw.id)) throw refused(CONFLICT.different(raw));
    ids.add(raw.id);
  }
  const arrivals = fresh.filter(({ happening }) => happening.kind === 'lots-added');
  await undos.refresh(tx);
  const born = known(arrivals).flatMap(lotsBornIn);
  const lots = tx.objectStore('lots');
  const keys = await Promise.all(born.map(({ id }) => lots.getKey(id)));
  const once = new Set<string>();
  for (const [i, { id }] of born.entries()) {
    if (keys[i] !== undefined || undos.wasGone(id) || once.has(id)) throw refused(CONFLICT.bornTwice(id));
    once.add(id);
  }
  return fresh;
}

async function notHere(tx: WriteTransaction, entries: readonly Envelope[]): Promise<Envelope[]> {
  const store = tx.objectStore('entries');
  const ends = await endsOf(tx, entries);
  const last = (await lastIdOf(tx)) ?? '';
  // Behind the last entry of all there is none with that id, and behind a device's last none with that number.
  const same = await Promise.all(entries.map(({ id }) => (id > last ? undefined : store.get(id))));
  const fresh: Envelope[] = [];
  for (const [i, raw] of entries.entries()) {
    const here = same[i];
    if (here !== undefined && canonicalJson(here) !== canonicalJson(raw)) throw refused(CONFLICT.different(here));
    if (here !== undefined) continue;
    if (raw.sequence <= (ends.get(raw.device)?.sequence ?? 0)) {
      const place = await store.index('sequence').get([raw.device, raw.sequence]);
      if (place !== undefined) throw refused(CONFLICT.forked(place));
    }
    fresh.push(raw);
  }
  return fresh;
}

/** @throws Refused when the entries do not follow what is here of their device */
export async function goesOn(tx: WriteTransaction, fresh: readonly Envelope[]): Promise<void> {
  const links = fresh.map(({ id, device, sequence, previous, hash }) => {
    // The hash of what it holds, and its time, were checked before: they are the same whatever is here.
    return { id, device, sequence, previous, hash, intact: true, late: false };
  });
  const [finding] = checkLinks(links, await endsOf(tx, fresh));
  if (finding !== undefined) throw new Refused('broken-chain', `${finding.message} ${END}`);
}

async function endsOf(tx: WriteTransaction, entries: readonly Envelope[]): Promise<ReadonlyMap<DeviceId, ChainEnd>> {
  const ends = new Map<DeviceId, ChainEnd>();
  for (const device of new Set(entries.map((raw) => raw.device))) {
    const last = await lastOf(tx, device);
    if (last !== null) ends.set(device, last);
  }
  return ends;
}

const refused = ({ reason, message }: Refusal): Refused => new Refused(reason, message);
