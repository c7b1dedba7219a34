import type { FirstRows } from '../connection/schema.ts';

/**
 * The rows that `keepFirstRows` keeps, as this build put them into words; none where there are none or the browser gives
 * us no data. It comes before everything else and so asks the browser alone, whatever the rest of the store would load.
 */
export function readFirstRows(build: string, name = 'headroom'): Promise<readonly unknown[]> {
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
        const asking = database.transaction('meta').objectStore('meta').get('first-rows');
        asking.onerror = nothing;
        asking.onsuccess = () => {
          const kept: FirstRows | undefined = asking.result;
          resolve(kept?.build === build ? kept.rows : []);
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
