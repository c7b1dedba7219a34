import type { LotFacts, LotField, LotId, LotSource } from '../domain/lot/lot.ts';
import type { Outcome, Refusal } from '../domain/outcome.ts';
import type { Setup } from '../domain/setup/setup.ts';
import type { Instant } from '../domain/time/instant.ts';
import type { Entry, EntryId, Evidence } from '../journal/entry.ts';
import type { SetupState } from '../journal/fold-setup.ts';
import type { LotState } from '../journal/lot-state.ts';
import type { Change } from '../journal/make-entry.ts';
import type { About } from './about.ts';
import type { AddLotsOptions, LotsAdded, LotToAdd } from './add-lots.ts';
import type { RestorePreview } from './backup/compare-with-journal.ts';
import type { Backup } from './backup/read-backup.ts';
import type { Restored, RestoreOptions } from './backup/restore.ts';
import type { BackupFile } from './backup/write-backup.ts';
import type { JournalCheck } from './check-journal.ts';
import type { HistoryItem } from './history.ts';
import type { ByCloseOptions } from './read-lots.ts';
import type { Views } from './schema.ts';
import type { StoreChange } from './touched.ts';

export interface StoreOptions {
  readonly now: () => Instant;
  /** Cryptographic randomness: `(n) => crypto.getRandomValues(new Uint8Array(n))`. */
  readonly random: (bytes: number) => Uint8Array;
  /** Who writes, for a browser that has none yet; `buyer` when left out. */
  readonly author?: string;
  /** The database's name; only tests give one. */
  readonly name?: string;
  /** Whether there is a channel between tabs; asked of the browser when left out. */
  readonly channel?: boolean;
  /** A newer Headroom opened the data in another tab. Show the sentence: from now on everything here is refused. */
  readonly onUpdatedElsewhere?: (notice: Refusal) => void;
}

/** Of a lot: fields to set, fields to empty, and where the new values came from. */
export interface LotChange {
  readonly set?: LotFacts;
  readonly clear?: readonly LotField[];
  readonly evidence?: Readonly<Record<string, Evidence>>;
}

/** The answer of a write: the entries it made, whose ids can be undone. */
export type Written = Promise<Outcome<readonly Entry[]>>;

/**
 * The journal and its views, for the pages and the background alike. It keeps nothing in memory: every read asks the
 * database, and a second store over the same database, in another tab, is the same store.
 *
 * Writing answers with an outcome. Reading gives the value, and rejects with StoreUnavailable, whose message is for the
 * user, when the browser does not give us the data; "there is none" is null or an empty list.
 */
export interface Store {
  /** Writes any happenings, all or none. The verbs below are for what is common. */
  append(changes: readonly Change[]): Written;
  /** Brings lots in, 250 an entry. A refusal says in `added` what was written before it. */
  addLots(
    source: LotSource,
    lots: Iterable<LotToAdd> | AsyncIterable<LotToAdd>,
    options?: AddLotsOptions,
  ): Promise<Outcome<LotsAdded, Refusal & { readonly added: LotsAdded }>>;
  changeLot(id: LotId, change: LotChange): Written;
  /** Stops watching a lot; it stays in the journal and in `allLots`. */
  dropLot(id: LotId): Written;
  saveSetup(sections: Partial<Setup>): Written;
  /** Records alerts as shown; those that are recorded already make no entry. */
  recordShown(keys: readonly string[]): Written;
  /** Takes entries back, all or none. Undoing the entry that this returns brings them back again. */
  undo(...ids: readonly EntryId[]): Written;

  lot(id: LotId): Promise<LotState | null>;
  /** Watched lots with a close, the soonest first. */
  lotsByClose(options?: ByCloseOptions): Promise<LotState[]>;
  /** Every lot, dropped ones too, in the order in which they came in. */
  allLots(): Promise<LotState[]>;
  /** Lots with exactly this VIN, dropped ones too. */
  lotsByVin(vin: string): Promise<LotState[]>;
  /** The sections ever saved; null when the setup was never touched. */
  setup(): Promise<SetupState>;
  shownAlerts(): Promise<ReadonlySet<string>>;
  /** All that happened to a lot, the earliest first. */
  historyOfLot(id: LotId): Promise<HistoryItem[]>;
  historyOfSetup(): Promise<HistoryItem[]>;

  /** The whole journal as one file, as it stands at this moment. Call `noteBackup` once the user has saved it. */
  backup(): Promise<BackupFile>;
  /** Remembers, in this browser only, that a backup was saved. */
  noteBackup(file: BackupFile): Promise<Outcome<null>>;
  /** What `restore` would do with a backup that readBackup found good. */
  previewRestore(backup: Backup): Promise<RestorePreview>;
  /** All of a backup, or nothing. */
  restore(backup: Backup, options: RestoreOptions): Promise<Outcome<Restored>>;

  about(): Promise<About>;
  /** In whose name this browser writes from now on; 1 to 80 characters. */
  setAuthor(name: string): Promise<Outcome<null>>;
  /** Checks every hash and every chain. */
  checkJournal(): Promise<JournalCheck>;
  /** Makes the views again from the journal. Never needed after a crash; for a user who doubts what he sees. */
  rebuildViews(): Promise<Outcome<Views>>;

  /** Calls back after changes by anyone, here or in another tab, gathered over 40 ms (400 ms for many lots). Returns how to stop. */
  subscribe(listener: (change: StoreChange) => void): () => void;
  close(): void;
}
