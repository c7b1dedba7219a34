import type { Outcome, Refusal } from '../domain/outcome.ts';
import { instant } from '../domain/time/instant.ts';
import { openStore } from './open-store.ts';
import type { Store, StoreOptions } from './store.ts';

/**
 * Opens the store with this browser's clock and randomness.
 * @param name of the database, where it is not the dealer's own
 * @param otherwise a clock that is not this browser's, and whether other tabs and the background hear of what is written
 */
export function openThisStore(
  onUpdatedElsewhere?: (notice: Refusal) => void,
  name?: string,
  otherwise: Pick<Partial<StoreOptions>, 'now' | 'channel'> = {},
): Promise<Outcome<Store, Refusal>> {
  return openStore({
    now: () => instant(Date.now()),
    random: (bytes) => crypto.getRandomValues(new Uint8Array(bytes)),
    ...(onUpdatedElsewhere ? { onUpdatedElsewhere } : {}),
    ...(name === undefined ? {} : { name }),
    ...otherwise,
  });
}
