import { type Outcome, ok, type Refusal } from '../domain/outcome.ts';
import { storageRoom } from './attachments/storage-room.ts';
import { connect } from './connection/connection.ts';
import { changeFeed } from './journal/change-feed.ts';
import type { StoreOptions } from './store.ts';
import { readHead } from './write/head.ts';
import { prepare } from './write/prepare.ts';
import { refusalFor } from './write/refused.ts';
import type { Session } from './write/session.ts';

const DATABASE = 'headroom';

/** What every operation works with, once the database has answered. */
export interface OpenSession {
  readonly session: Session;
  /** Whether other tabs hear of changes, and we of theirs. */
  readonly hasChannel: boolean;
}

/** Opens the database, brings it up to this version and sees whether it answers. */
export async function openSession(options: StoreOptions): Promise<Outcome<OpenSession, Refusal>> {
  const {
    now,
    random,
    author = 'buyer',
    name = DATABASE,
    onUpdatedElsewhere = () => undefined,
    room = storageRoom,
  } = options;
  const hasChannel = options.channel ?? typeof BroadcastChannel === 'function';
  const feed = changeFeed(hasChannel ? () => new BroadcastChannel(name) : null);
  const connection = connect(name, { prepare: (db) => prepare(db, { random, author }), onUpdatedElsewhere });
  try {
    await connection.read(readHead);
  } catch (error) {
    feed.close();
    connection.close();
    return { ok: false, ...refusalFor(error) };
  }
  return ok({ session: { connection, feed, now, random, room }, hasChannel });
}
