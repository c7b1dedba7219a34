import type { Instant } from '../domain/time/instant.ts';
import type { ChangeFeed } from './change-feed.ts';
import type { Connection } from './connection.ts';

/** What every operation of an open store works with. */
export interface Session {
  readonly connection: Connection;
  readonly feed: ChangeFeed;
  readonly now: () => Instant;
  readonly random: (bytes: number) => Uint8Array;
}
