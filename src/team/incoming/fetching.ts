import type { Outcome, Refusal } from '../../domain/outcome.ts';
import type { DeviceId } from '../../journal/ids.ts';
import type { Envelope } from '../../journal/read-entry.ts';
import type { SignedHead } from '../../journal/signed-head.ts';
import type { Sighting, Stored } from '../../journal/witness.ts';
import type { Wire } from '../wire/wire.ts';
import type { Here } from './check-entries.ts';
import type { Membership } from './membership.ts';

/** How far a device has read what the server has. */
export interface Position {
  /** The last message that was looked at; 0 for none. */
  readonly place: number;
  /** The hash of it, by which a server that was restored from an older copy is told; '' for none. */
  readonly hash: string;
  /** Devices of which something is missing, each with the first message that has to wait for it. */
  readonly waiting: ReadonlyMap<DeviceId, number>;
}
export const FROM_THE_BEGINNING: Position = { place: 0, hash: '', waiting: new Map() };

/** What a message brings into the journal; no entries when it only repeats what is there. */
export interface ToTakeIn {
  readonly entries: readonly Envelope[];
  readonly head: SignedHead;
  readonly stored: Stored;
  readonly sighting: Sighting | null;
}

export interface Fetching {
  readonly journal: Here & {
    device(): Promise<DeviceId>;
    /** All of them or none. What devices saw of each other and does not fit is told. */
    takeIn(
      arrived: readonly ToTakeIn[],
    ): Promise<Outcome<{ readonly added: number; readonly told: readonly string[] }>>;
  };
  readonly wire: Wire;
  readonly membership: Membership;
  /** Told after each page how far it is, so that it can be shown, and gone on from when this is cut off. */
  readonly reached?: (position: Position) => Promise<void>;
}

export interface FetchResult {
  readonly position: Position;
  readonly added: number;
  /** A sentence for each message that was left out, or that has something to tell. */
  readonly told: readonly string[];
  /** Why the rest was not fetched; null when all was. */
  readonly stopped: Refusal | null;
}
