import type { Instant } from '../../domain/time/instant.ts';
import type { StorageRoom } from '../attachments/storage-room.ts';
import type { Connection } from '../connection/connection.ts';
import type { ChangeFeed } from '../journal/change-feed.ts';

/** What every operation of an open store works with. */
export interface Session {
  readonly connection: Connection;
  readonly feed: ChangeFeed;
  /** How full this browser's storage is; null where the browser does not say. */
  readonly room: () => Promise<StorageRoom | null>;
  readonly now: () => Instant;
  readonly random: (bytes: number) => Uint8Array;
}
