import type { Instant } from '../../domain/time/instant.ts';
import type { FirstFolders, FirstRows } from '../connection/schema.ts';

export interface ReadFirstRows {
  /** The rows of the list, unless it says otherwise. */
  readonly what?: 'first-rows' | 'first-folders';
  /** Rows that hold for a day only are not given after it. */
  readonly now?: Instant;
  /** Of the database. */
  readonly name?: string;
}

/**
 * The rows that `keepFirstRows` or `keepFirstFolders` keeps, as this build put them into words; none where there are none or
 * the browser gives us no data. It comes before everything else and so asks the browser alone, whatever the rest of the
 * store would load.
 */
export function readFirstRows(
  build: string,
  { what = 'first-rows', now, name = 'headroom' }: ReadFirstRows = {},
): Promise<readonly unknown[]> {
  return new Promise((resolve) => {
    const nothing = () => resolve([]);
    if (typeof indexedDB === 'undefined') return nothing();
    const opening = indexedDB.open(name);
    // There is no database yet, and what makes it is not here.
    opening.onupgradeneeded = () => opening.transaction?.abort();
    opening.onerror = (event) => {
      // Firefox would report it as a mistake of ours.
      event.preventDefault();
      nothing();
    };
    opening.onblocked = nothing;
    opening.onsuccess = () => {
      const database = opening.result;
      try {
        const asking = database.transaction('meta').objectStore('meta').get(what);
        asking.onerror = nothing;
        asking.onsuccess = () => {
          const kept: FirstRows | FirstFolders | undefined = asking.result;
          const isOver = kept !== undefined && 'until' in kept && now !== undefined && kept.until <= now;
          resolve(kept?.build === build && !isOver ? kept.rows : []);
        };
      } catch {
        // A database of another make.
        nothing();
      }
      // It closes once that is answered; open, it would be in the way of a newer version.
      database.close();
    };
  });
}
