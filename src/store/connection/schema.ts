import type { DBSchema, IDBPDatabase, IDBPTransaction } from 'idb';
import * as z from 'zod/mini';
import type { LotId } from '../../domain/lot/lot.ts';
import { type Instant, instantSchema } from '../../domain/time/instant.ts';
import type { ShownAlert } from '../../folds/fold-alerts.ts';
import type { LotState } from '../../folds/lot-state.ts';
import { authorSchema, deviceIdSchema, entryIdSchema, hashSchema } from '../../journal/ids.ts';
import type { Envelope } from '../../journal/read-entry.ts';
import type { SignedHead } from '../../journal/signed-head.ts';
import type { Stamp } from '../../journal/stamp/stamp-format.ts';
import type { SetupState } from '../../journal/states/setup-state.ts';
import type { Sighting, Stored } from '../../journal/witness.ts';
import type { KeptPlan } from '../../views/plan/kept-plan.ts';
import type { KeptTeam, TeamProgress } from './kept-team.ts';

/** Where this browser continues its chain, and in whose name. */
export const headSchema = z.strictObject({
  device: deviceIdSchema,
  author: authorSchema,
  sequence: z.int().check(z.gte(0)),
  hash: z.union([z.literal(''), hashSchema]),
  lastId: z.nullable(entryIdSchema),
});
export type Head = z.infer<typeof headSchema>;

/** What the views were made with, and how many entries they had to leave out. */
export const viewsSchema = z.strictObject({
  foldVersion: z.int(),
  /** Entries that a newer Headroom wrote. */
  unknown: z.int(),
  unreadable: z.int(),
});
export type Views = z.infer<typeof viewsSchema>;

/** The last backup that the user is known to have. */
export const lastBackupSchema = z.strictObject({ at: instantSchema, entries: z.int() });
export type LastBackup = z.infer<typeof lastBackupSchema>;

/** The first rows of the list, in the words of the build that made them. */
export interface FirstRows {
  readonly build: string;
  readonly rows: readonly unknown[];
}

/** The first rows of the purchase folders; what they say of a day holds until then. */
export interface FirstFolders extends FirstRows {
  readonly until: Instant;
}

/** The bytes of an attached file, under their SHA-256. */
export interface StoredFile {
  readonly hash: string;
  readonly blob: Blob;
}

/** What a device of the team had of the others, and what the server said of that message. */
export interface StoredSighting extends Sighting {
  readonly id: string;
  readonly place: number;
  readonly storedAt: Instant;
  /** Something that it saw is not here yet, or is another here. */
  readonly open?: 1;
}

/** A piece of a file that is not here whole yet. */
export interface StoredPiece {
  /** The SHA-256 of the whole. */
  readonly hash: string;
  /** From 1. */
  readonly number: number;
  /** How many there are in all. */
  readonly count: number;
  /** The server's message that held it. */
  readonly place: number;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** Up to where the files that this browser's entries name are on the team's server. */
export interface FilesSent {
  /** The number of the last entry that was looked at. */
  readonly sequence: number;
  /** The last message with a piece of a file, and its hash; 0 and '' for none. */
  readonly place: number;
  readonly hash: string;
}

/**
 * The journal is `entries` and is the only truth. `lots`, `setup` and `alerts` are views: what the entries fold to, and
 * can be made again from them at any time. `files` holds the bytes of attachments, each
 * under its SHA-256, by which the journal names it; it is in every backup. `stored` and `sightings` hold what a team's server and
 * its devices witness, `pieces` parts of files that are fetched; they can be fetched again and are in no backup. `meta` is about this browser alone and is in none,
 * but for signatures and time stamps; this browser's own key can't be taken out.
 */
export interface HeadroomSchema extends DBSchema {
  entries: {
    key: string;
    value: Envelope;
    indexes: { subject: string; sequence: [string, number]; undoes: string };
  };
  lots: {
    key: LotId;
    value: LotState;
    indexes: { close: number; otherwise: number; vin: string; ended: string; disputed: string };
  };
  setup: { key: 'sections'; value: NonNullable<SetupState> };
  alerts: { key: string; value: ShownAlert };
  files: { key: string; value: StoredFile };
  stored: { key: [string, number]; value: Stored };
  sightings: { key: string; value: StoredSighting; indexes: { open: number } };
  pieces: { key: [string, number]; value: StoredPiece };
  meta: {
    key:
      | 'head'
      | 'views'
      | 'last-backup'
      | 'first-rows'
      | 'first-folders'
      | 'author-given'
      | 'signing-key'
      | 'signed-heads'
      | 'stamps'
      | 'plan'
      | 'plan-basis'
      | 'team-files'
      | 'team'
      | 'team-progress';
    value:
      | Head
      | Views
      | LastBackup
      | FirstRows
      | FirstFolders
      | true
      | CryptoKeyPair
      | readonly SignedHead[]
      | readonly Stamp[]
      | KeptPlan
      | FilesSent
      | KeptTeam
      | TeamProgress
      | string;
  };
}

export const STORE_NAMES = [
  'entries',
  'lots',
  'setup',
  'alerts',
  'files',
  'stored',
  'sightings',
  'pieces',
  'meta',
] as const;
export type Database = IDBPDatabase<HeadroomSchema>;
export type ReadTransaction = IDBPTransaction<HeadroomSchema, typeof STORE_NAMES, 'readonly' | 'readwrite'>;
export type WriteTransaction = IDBPTransaction<HeadroomSchema, typeof STORE_NAMES, 'readwrite'>;
