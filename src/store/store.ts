import type { Evidence } from '../domain/lot/evidence.ts';
import type { LotFacts, LotField, LotId, LotSource } from '../domain/lot/lot.ts';
import type { Outcome, Refusal } from '../domain/outcome.ts';
import type { BidAction } from '../domain/sale/bid-action.ts';
import type { PurseEntry } from '../domain/setup/purse-entry.ts';
import type { Setup } from '../domain/setup/setup.ts';
import type { Instant } from '../domain/time/instant.ts';
import type { LotRevisions } from '../folds/lot-revisions.ts';
import type { LotState } from '../folds/lot-state.ts';
import type { GoneLot } from '../folds/taken-up.ts';
import type { ChainHead } from '../journal/chain-head.ts';
import type { Entry } from '../journal/entry.ts';
import type { Happening } from '../journal/happening.ts';
import type { BookedHappening } from '../journal/happenings/books.ts';
import type { PackShows } from '../journal/happenings/row.ts';
import type { EntryId } from '../journal/ids.ts';
import type { Change } from '../journal/make-entry.ts';
import type { Noted } from '../journal/noted.ts';
import type { DeviceKey } from '../journal/signed-head.ts';
import type { Stamp } from '../journal/stamp/stamp-format.ts';
import type { BooksState } from '../journal/states/books-state.ts';
import type { KeptAttachment } from '../journal/states/kept-attachment.ts';
import type { Belief } from '../views/belief-at.ts';
import type { EntriesOfLots } from '../views/learn/entries-of-lots.ts';
import type { KeptPlan } from '../views/plan/kept-plan.ts';
import type { PlanInputs } from '../views/plan/make-plan.ts';
import type { AttachmentKept, AttachmentToKeep } from './attachments/keep-attachment.ts';
import type { StorageRoom } from './attachments/storage-room.ts';
import type { RestorePreview } from './backup/compare-with-journal.ts';
import type { Backup } from './backup/read-backup.ts';
import type { Restored, RestoreOptions } from './backup/restore.ts';
import type { BackupFile } from './backup/write-backup.ts';
import type { About, Author } from './connection/about.ts';
import type { Views } from './connection/schema.ts';
import type { JournalCheck } from './journal/check-journal.ts';
import type { Evidence as LotEvidence } from './journal/evidence.ts';
import type { HistoryItem } from './journal/history.ts';
import type { LongWork } from './journal/slices.ts';
import type { TeamDevice, TeamStanding } from './team/team-state.ts';
import type { FirstFoldersOptions } from './views/first-folders.ts';
import type { FirstRowsOptions } from './views/first-rows.ts';
import type { PlanNow } from './views/kept-plan.ts';
import type { ByCloseOptions } from './views/read-lots.ts';
import type { WrongClock } from './views/shown-alerts.ts';
import type { AddLotsOptions, LotsAdded, LotToAdd } from './write/add-lots.ts';
import type { StoreChange } from './write/touched.ts';

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
  /** How full the storage is; asked of the browser when left out. */
  readonly room?: () => Promise<StorageRoom | null>;
  /** A newer Headroom opened the data in another tab. Show the sentence: from now on everything here is refused. */
  readonly onUpdatedElsewhere?: (notice: Refusal) => void;
}

/** Of a lot: fields to set, fields to empty, and where the new values came from. */
export interface LotChange {
  readonly set?: LotFacts;
  readonly clear?: readonly LotField[];
  readonly evidence?: Readonly<Record<string, Evidence>>;
  /** When the price now was seen, where that is another moment than this. */
  readonly seenAt?: Instant;
  /** Whether the user looked at it and took it, though it contradicts what was known. */
  readonly confirmed?: true;
}

/** How a lot ended, and what is known about the bidding. */
export type ResultNote = Omit<Extract<Happening, { kind: 'result-noted' }>, 'kind'>;

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
  /**
   * Writes what is decided of a lot as it is at that very moment, by whom this browser writes for; nothing for no change.
   * Refused when the lot is not here.
   */
  changeAfter(id: LotId, decide: (lot: LotState, author: string) => readonly Change[]): Written;
  /** Keeps a receipt of what somebody did or saw at the sale; the proxy that stands follows from it. */
  noteBid(id: LotId, bid: BidAction): Written;
  /** Keeps how a lot ended; a later one corrects it. */
  noteResult(id: LotId, result: ResultNote): Written;
  /**
   * Keeps a file with a lot: at most 100 MB, and only while there is room; a full disk loses nothing that was there.
   * `warning` in the answer is to be shown.
   */
  keepAttachment(id: LotId, file: AttachmentToKeep): Promise<Outcome<AttachmentKept>>;
  /** Books bills, payments, outcomes and the like, all or none. */
  book(...happenings: readonly BookedHappening[]): Written;
  /** Stops watching a lot; it stays in the journal and in `allLots`. */
  dropLot(id: LotId): Written;
  saveSetup(sections: Partial<Setup>): Written;
  /** Records alerts as shown; those that are recorded already make no entry. */
  recordShown(keys: readonly string[]): Written;
  /** Says that the clock was put back, and which alerts it made us show too early, so that they are shown again. */
  putClockRight(wrong: WrongClock): Written;
  /** Takes entries back, all or none. Undoing the entry that this returns brings them back again. */
  undo(...ids: readonly EntryId[]): Written;

  lot(id: LotId): Promise<LotState | null>;
  /** Watched lots with a close, the soonest first. */
  lotsByClose(options?: ByCloseOptions): Promise<LotState[]>;
  /** Watched lots whose close is in doubt and can also mean a moment in this stretch, the second end not included. */
  lotsInDoubt(from: Instant, before: Instant): Promise<LotState[]>;
  /** Every lot, dropped ones too, in the order in which they came in. */
  allLots(): Promise<LotState[]>;
  /** Lots that were won or are or were disputed, dropped ones too, in the order in which they came in. */
  lotsAfterSale(): Promise<LotState[]>;
  /** Lots about which there is or was a dispute, dropped ones too. */
  disputedLots(): Promise<LotState[]>;
  /** Lots with exactly this VIN, dropped ones too. */
  lotsByVin(vin: string): Promise<LotState[]>;
  /** The files that are kept with a lot, in the order in which they came. */
  attachmentsOf(id: LotId): Promise<readonly KeptAttachment[]>;
  /** The bytes under a SHA-256, or null when they are not here. Show a picture; let anything else be saved, not opened. */
  readAttachment(hash: string): Promise<Blob | null>;
  /** How full the browser's storage is, or null where it does not say. */
  room(): Promise<StorageRoom | null>;
  /** The sections ever saved; null when the setup was never touched. */
  setup(): Promise<Partial<Setup> | null>;
  /** The purse as it was last counted; null without one. */
  purse(): Promise<PurseEntry | null>;
  /** Counts the purse, or takes it away. */
  setPurse(purse: PurseEntry | null): Written;
  /** The books as they stand. */
  books(): Promise<BooksState>;
  /** For lots, what was known and which setup held when each was first noted as won (else, when `at` was written). */
  beliefs(wanted: Iterable<{ readonly lot: LotId; readonly at: EntryId }>): Promise<Map<LotId, Belief>>;
  /** The entries about the setup and about some lots, from which what was believed at any moment can be told. */
  entriesOf(lots: Iterable<LotId>): Promise<EntriesOfLots>;
  /** What was known of a lot at a moment, and the setup that held then; null when it was not here yet. */
  believedAt(lot: LotId, at: Instant): Promise<Belief | null>;
  /** When each alert was recorded as shown by this browser, by its stable key; and every correction of a clock, by its own. */
  shownAlerts(): Promise<ReadonlyMap<string, Instant>>;
  /** What this browser's clock showed when it last wrote something; null when it never did. */
  lastWritten(): Promise<Instant | null>;
  /** All that happened to a lot, the earliest first. */
  historyOfLot(id: LotId): Promise<HistoryItem[]>;
  /** The same, and what was booked for it. */
  lifeOfLot(id: LotId): Promise<HistoryItem[]>;
  historyOfSetup(): Promise<HistoryItem[]>;
  /** Of every lot, how often the journal was written in about it, and every close it ever had. */
  lotRevisions(): Promise<LotRevisions>;
  /** The lots whose arrival was undone, as they came in. */
  goneLots(revisions: LotRevisions): Promise<readonly GoneLot[]>;

  /** The chains that bind what the journal says of a lot, for an evidence pack; null when the lot is not here. */
  evidenceOf(id: LotId, shows: PackShows): Promise<LotEvidence | null>;
  /** The whole journal as one file, as it stands at this moment. Call `noteBackup` once the user has saved it. */
  backup(): Promise<BackupFile>;
  /** Remembers, in this browser only, that a backup was saved. */
  noteBackup(file: BackupFile): Promise<Outcome<null>>;
  /** The keys that devices are known to sign with, this browser's own among them. */
  knownKeys(): Promise<readonly DeviceKey[]>;
  /** The time stamps of entries here, unchecked. */
  stamps(): Promise<readonly Stamp[]>;
  /** The entry whose noted line has this SHA-256, in hex: what a time stamp is of. */
  headWithImprint(imprint: string): Promise<ChainHead | null>;
  /** Keeps a time stamp that was checked, for backups and packs. */
  addStamp(stamp: Stamp): Promise<Outcome<null>>;
  /** What `restore` would do with a backup that readBackup found good. Rejects with Refused when it was stopped. */
  previewRestore(backup: Backup, work?: LongWork): Promise<RestorePreview>;
  /** All of a backup, or nothing. */
  restore(backup: Backup, options: RestoreOptions): Promise<Outcome<Restored>>;

  about(): Promise<About>;
  /** In whose name this browser writes, and whether its user has said so. */
  author(): Promise<Author>;
  /** In whose name this browser writes from now on; 1 to 80 characters. */
  setAuthor(name: string): Promise<Outcome<null>>;
  /** Checks every hash and every chain, and holds them against what was noted elsewhere. */
  checkJournal(noted?: Noted): Promise<JournalCheck>;
  /** Makes the views again from the journal. Never needed after a crash; for a user who doubts what he sees. */
  rebuildViews(): Promise<Outcome<Views>>;

  /** Keeps the first rows of the list in words, for the next time the page is opened; false when they were overtaken. */
  keepFirstRows(options: FirstRowsOptions): Promise<boolean>;

  /** Keeps the first rows of the purchase folders in words; false when they were overtaken. */
  keepFirstFolders(options: FirstFoldersOptions): Promise<boolean>;

  /** The plan as it was last made here; null while there is none. */
  plan(): Promise<PlanNow | null>;
  /** All that a plan is made from. */
  planInputs(): Promise<PlanInputs>;
  /** Keeps a plan until the next; null for none. */
  keepPlan(plan: KeptPlan | null): Promise<void>;

  /** How this browser stands to its team; null while it is in none. */
  team(): Promise<TeamStanding | null>;
  /** Every device that wrote in the journal that is here. */
  teamDevices(): Promise<readonly TeamDevice[]>;

  /** Calls back after changes by anyone, here or in another tab, gathered over 40 ms (400 ms for many lots). Returns how to stop. */
  subscribe(listener: (change: StoreChange) => void): () => void;
  close(): void;
}
