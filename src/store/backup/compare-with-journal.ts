import type { LotId } from '../../domain/lot/lot.ts';
import type { Refusal } from '../../domain/outcome.ts';
import { canonicalJson } from '../../journal/canonical-json.ts';
import { linksByDevice } from '../../journal/check-noted.ts';
import type { EntryId } from '../../journal/ids.ts';
import { type Envelope, type ReadEntry, readEntry } from '../../journal/read-entry.ts';
import type { ReadTransaction } from '../connection/schema.ts';
import { eachEntry } from '../journal/each-entry.ts';
import { type LongWork, Slices } from '../journal/slices.ts';
import type { Session } from '../write/session.ts';
import { conflictsWith } from './conflicts.ts';
import type { Backup } from './read-backup.ts';
import { type RestoreChanges, WhatChanges } from './what-changes.ts';

const CONFLICT = conflictsWith({ there: 'in the backup', end: 'Nothing was restored.' });

interface Comparison {
  /** Entries that are in both. */
  readonly same: ReadonlySet<EntryId>;
  /** How many entries are only here. */
  readonly onlyHere: number;
  /** Why the two cannot be one journal; null when they can. */
  readonly conflict: Refusal | null;
  /** What a merge changes here. */
  readonly changes: RestoreChanges;
}

/** What a restore would do, for the question before it. */
export interface RestorePreview {
  /** Entries that would come in. */
  readonly added: number;
  readonly same: number;
  /** Whose entries would come in: `number 34 of device X, number 1 to 9 of device Y`. */
  readonly newPlaces: string;
  /** Entries that are only here: a merge keeps them, a replacement throws them away. */
  readonly onlyHere: number;
  /** Why a merge would be refused; null when it would not. */
  readonly conflict: Refusal | null;
  /** What a merge would change here. */
  readonly changes: RestoreChanges;
}

/** @throws Refused when it was stopped */
export function previewRestore(session: Session, backup: Backup, work: LongWork = {}): Promise<RestorePreview> {
  return session.connection.read(async (tx) => {
    const total = (await tx.objectStore('entries').count()) + backup.entries.length;
    const slices = slicesIn(tx, { ...work, total });
    const { same, onlyHere, conflict, changes } = await compareWithJournal(tx, backup, slices);
    const added = backup.entries.filter(({ id }) => !same.has(id));
    await slices.turn();
    return { added: added.length, same: same.size, newPlaces: spans(added), onlyHere, conflict, changes };
  });
}

/** Slices of work in a transaction, which lasts only while there are requests. */
export function slicesIn(tx: ReadTransaction, work: LongWork & { readonly total: number }): Slices {
  return new Slices({ ...work, stepAside: () => tx.objectStore('meta').getKey('head') });
}

function spans(entries: readonly Envelope[]): string {
  return [...linksByDevice(entries)]
    .map(([device, own]) => {
      const numbers = own.map(({ sequence }) => sequence).sort((a, b) => a - b);
      const [first, last] = [numbers.at(0), numbers.at(-1)];
      return `number ${first === last ? first : `${first} to ${last}`} of device ${device}`;
    })
    .join(', ');
}

/** Holds a backup against the journal here, entry by entry. */
export async function compareWithJournal(tx: ReadTransaction, backup: Backup, slices: Slices): Promise<Comparison> {
  const whatChanges = new WhatChanges();
  const inFile = new Map<EntryId, Envelope>();
  const placesInFile = new Set<string>();
  for (const entry of backup.entries) {
    inFile.set(entry.id, entry);
    placesInFile.add(placeOf(entry));
    if (slices.took(0)) await slices.turn();
  }
  const same = new Set<EntryId>();
  let onlyHere = 0;
  let conflict: Refusal | null = null;
  const compare = (here: Envelope): void => {
    const there = inFile.get(here.id);
    if (there !== undefined && canonicalJson(there) === canonicalJson(here)) same.add(here.id);
    else if (there !== undefined) conflict ??= CONFLICT.different(here);
    else {
      onlyHere += 1;
      const read = readEntry(here);
      if (read.as === 'known') whatChanges.addHere(read.entry);
      if (placesInFile.has(placeOf(here))) conflict ??= CONFLICT.forked(here);
      const lot = lotBornAgain(read, backup.births);
      if (lot !== null) conflict ??= CONFLICT.bornTwice(lot);
    }
  };
  await eachEntry(tx, compare, slices);
  for (const raw of backup.entries) {
    const read = same.has(raw.id) ? null : readEntry(raw);
    if (read?.as === 'known') whatChanges.addIncoming(read.entry);
    if (slices.took()) await slices.turn();
  }
  return { same, onlyHere, conflict, changes: await whatChanges.changes(slices) };
}

function placeOf({ device, sequence }: Envelope): string {
  return `${device} ${sequence}`;
}

function lotBornAgain(read: ReadEntry, births: ReadonlySet<LotId>): LotId | null {
  if (read.as !== 'known' || read.entry.happening.kind !== 'lots-added') return null;
  return read.entry.happening.lots.find(({ id }) => births.has(id))?.id ?? null;
}
