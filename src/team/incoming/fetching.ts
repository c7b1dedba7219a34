import type { Outcome, Refusal } from '../../domain/outcome.ts';
import type { DeviceId } from '../../journal/ids.ts';
import type { Envelope } from '../../journal/read-entry.ts';
import type { SignedHead } from '../../journal/signed-head.ts';
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

export interface Fetching {
  readonly journal: Here & {
    device(): Promise<DeviceId>;
    takeIn(arrived: { entries: readonly Envelope[]; head: SignedHead }): Promise<Outcome<{ readonly added: number }>>;
  };
  readonly wire: Wire;
  readonly membership: Membership;
}

export interface FetchResult {
  readonly position: Position;
  readonly added: number;
  /** A sentence for each message that was left out, or that has something to tell. */
  readonly told: readonly string[];
  /** Why the rest was not fetched; null when all was. */
  readonly stopped: Refusal | null;
}
