import { readHead } from '../write/head.ts';
import type { Session } from '../write/session.ts';
import { EVERYTHING } from '../write/touched.ts';
import type { ChangeFeed } from './change-feed.ts';

const EVERY = 2_000;

/**
 * Where the browser has no channel between tabs: looks every two seconds whether the journal grew by another's hand, and
 * says that everything may have changed. Returns how to stop.
 */
export function watchJournal(session: Session, feed: ChangeFeed): () => void {
  let seen: string | null | undefined;
  const timer = setInterval(() => {
    session.connection
      .read(async (tx) => (await readHead(tx)).lastId)
      .then(
        (lastId) => {
          if (seen !== undefined && lastId !== seen) feed.announce(EVERYTHING);
          seen = lastId;
        },
        () => 'the next read of the page itself tells the user why',
      );
  }, EVERY);
  return () => clearInterval(timer);
}
