import type { Instant } from '../domain/time/instant.ts';
import { MINUTE } from '../domain/time/units.ts';
import type { Store } from '../store/store.ts';

/** What was recorded this much later than now can't have been: the clock was wrong then and has gone back since. */
const TOLERANCE = MINUTE;

/**
 * The alerts that count as shown. What a clock that ran ahead made us say was said at the wrong time, and would be missed
 * at the right one, so it is struck out of the journal's count as soon as the clock is seen to have gone back.
 */
export async function honestlyShown(
  store: Store,
  recorded: ReadonlyMap<string, Instant>,
  now: Instant,
): Promise<ReadonlySet<string>> {
  const shown = new Set(recorded.keys());
  const wrong = [...recorded].filter(([, at]) => at > now + TOLERANCE).map(([key]) => key);
  if (wrong.length === 0) return shown;
  for (const key of wrong) shown.delete(key);
  const written = await store.voidShown(wrong);
  if (!written.ok) throw new Error(written.message);
  return shown;
}
