import type { Outcome, Refusal } from '../domain/outcome.ts';
import { type Instant, instant } from '../domain/time/instant.ts';
import { openStore } from './open-store.ts';
import type { Store } from './store.ts';

/**
 * Opens the store with this browser's clock and randomness.
 * @param name of the database, where it is not the dealer's own
 * @param now the clock, where it is not this browser's
 */
export function openThisStore(
  onUpdatedElsewhere?: (notice: Refusal) => void,
  name?: string,
  now: () => Instant = () => instant(Date.now()),
): Promise<Outcome<Store, Refusal>> {
  return openStore({
    now,
    random: (bytes) => crypto.getRandomValues(new Uint8Array(bytes)),
    ...(onUpdatedElsewhere ? { onUpdatedElsewhere } : {}),
    ...(name === undefined ? {} : { name }),
  });
}
