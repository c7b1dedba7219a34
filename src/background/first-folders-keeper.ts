import { thisZone } from '../browser/this-zone.ts';
import { wholeSetup } from '../domain/setup/starting-setup.ts';
import { addDays } from '../domain/time/calendar-day.ts';
import type { Instant } from '../domain/time/instant.ts';
import type { LocalTime } from '../domain/time/local-date.ts';
import { resolveWallTime } from '../domain/time/resolve-wall-time.ts';
import { dateIn } from '../domain/time/wall-clock.ts';
import type { Store } from '../store/store.ts';
import type { LatestWins } from '../store/views/first-folders.ts';
import { readFirstRows } from '../store/views/read-first-rows.ts';
import { folderWords } from '../views/books/folder-words.ts';
import { expectedAt, foldersOf } from '../views/books/folders-of.ts';

/** As many as fit any screen. */
const ROWS = 40;

/**
 * Sees to it that the first rows of the purchase folders are kept in words, for the day. Does nothing while those that are
 * kept still hold.
 * @param build which Headroom this is
 */
export async function seeToFirstFolders(store: Store, build: string, now: Instant): Promise<void> {
  if ((await readFirstRows(build, { what: 'first-folders', now })).length > 0) return;
  await store.keepFirstFolders({ build, limit: ROWS, inWords: (latest) => inWords(latest, now) });
}

function inWords({ setup: kept, lots, books, beliefs }: LatestWins, now: Instant) {
  // Without a store of his own, the user's zone is that of the computer, which may be another one tomorrow.
  if (lots.length === 0 || kept?.store === undefined) return null;
  const setup = wholeSetup(kept, thisZone());
  const { zone } = setup.store;
  const today = dateIn(zone, now);
  const wins = lots.flatMap((lot) => {
    const belief = beliefs.get(lot.id);
    return belief === undefined ? [] : [{ lot, belief }];
  });
  const { folders } = foldersOf(lots, books, expectedAt(wins, zone), setup, today);
  const tomorrow = { date: addDays(today, 1), time: '00:00' as LocalTime };
  return { rows: folders.map(folderWords), until: resolveWallTime(tomorrow, zone).earliest };
}
