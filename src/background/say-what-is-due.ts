import { type AlertLot, closesBy } from '../domain/alerts/alert-lot.ts';
import type { Refusal } from '../domain/outcome.ts';
import type { Instant } from '../domain/time/instant.ts';
import type { Store } from '../store/store.ts';
import { keepAtHand, sightAtHand } from './at-hand.ts';
import { badgeFor } from './badge-for.ts';
import { keepHeldBack } from './held-back.ts';
import { isAboutOpen } from './notice-id.ts';
import { planOf, type Sight, sightOf } from './sight.ts';
import { clearNotices, type Recorder, speak } from './speak.ts';
import { endTrouble, sayTrouble } from './trouble.ts';
import { forgetUnrecorded, unrecorded } from './unrecorded.ts';
import type { World } from './world.ts';

/** Asked before anything is said, so that a worker that dies while speaking is still woken. */
export type WakeFor = (next: Instant | null) => Promise<void>;

/**
 * One look: plans from the store as it is, has itself woken for the next reminder, says what is due with the greatest need
 * first, and records each as shown after it was. Where notices are turned off nothing counts as shown; the badge has it.
 * @returns how many alerts were said
 */
export async function sayWhatIsDue(store: Store, world: World, wakeFor: WakeFor): Promise<number> {
  const now = world.now();
  const earlier = await recordEarlier(store, world);
  const sight = withShown(await sightOf(store, world, now), earlier.keys);
  const { said, trouble } = await sayFrom(sight, world, { now, wakeFor, record: (keys) => store.recordShown(keys) });
  const wrong = trouble ?? earlier.trouble;
  if (wrong === null) await endTrouble(world);
  else await sayTrouble(world, wrong);
  await keepAtHand(world, sight, now);
  return said;
}

/**
 * The same while the lots can't be read: from what was at hand at the last look, kept in memory.
 * @returns how many alerts were said; null when nothing is at hand
 */
export async function sayFromMemory(world: World, why: Refusal, wakeFor: WakeFor): Promise<number | null> {
  const now = world.now();
  const kept = await sightAtHand(world, now);
  if (kept === null) return null;
  const sight = withShown(kept, await unrecorded(world));
  const { said } = await sayFrom(sight, world, { now, wakeFor, record: async () => ({ ok: false, ...why }) });
  return said;
}

interface Circumstances {
  readonly now: Instant;
  readonly wakeFor: WakeFor;
  readonly record: Recorder;
}

async function sayFrom(sight: Sight, world: World, { now, wakeFor, record }: Circumstances) {
  const { due, next, held = [], failed = [] } = planOf(sight, now);
  for (const { cause } of failed) world.report(cause);
  await wakeFor(next);
  await keepHeldBack(world, held, sight.setup.alerts.hourlyMost);
  const allowed = await world.noticesAllowed();
  await world.showBadge(badgeFor({ lots: sight.lots, due, allowed, now }));
  const isTaken = (lot: AlertLot) => sight.team !== undefined && lot.taken === true;
  const closed = sight.lots
    .filter((lot) => lot.ended || lot.done === true || closesBy(lot) <= now || isTaken(lot))
    .map(({ id }) => id);
  const answered = sight.lots.filter(({ ended }) => ended).map(({ id }) => `closed-${id}`);
  await clearNotices(world, (about) => answered.includes(about) || closed.some((id) => isAboutOpen(about, id)));
  return allowed ? speak(world, due, record) : { said: 0, trouble: null };
}

const withShown = (sight: Sight, more: readonly string[]): Sight =>
  more.length === 0 ? sight : { ...sight, shown: new Set([...sight.shown, ...more]) };

/** Writes down what was said when nothing could be written; gives what that was, and why it still can't be. */
async function recordEarlier(store: Store, world: World) {
  const keys = await unrecorded(world);
  if (keys.length === 0) return { keys, trouble: null };
  const written = await store.recordShown(keys);
  if (!written.ok) return { keys, trouble: written };
  await forgetUnrecorded(world, keys);
  return { keys, trouble: null };
}
