import { cantWorkOut } from '../domain/attempt.ts';
import type { Refusal } from '../domain/outcome.ts';
import { type Instant, instant } from '../domain/time/instant.ts';
import { MINUTE } from '../domain/time/units.ts';
import { StoreUnavailable } from '../store/connection/storage-failure.ts';
import type { Store } from '../store/store.ts';
import { sayFromMemory, sayWhatIsDue, type WakeFor } from './say-what-is-due.ts';
import { sayTrouble } from './trouble.ts';
import type { World } from './world.ts';

/** Rings when something is due. */
export const NEXT = 'next-alert';
/** Rings a little later when a look was begun and not finished. */
export const UNFINISHED = 'unfinished-look';
const HELD_NOTICE = 'lots-held #/lots';

const SOON = MINUTE;
/** Browsers raise a nearer alarm to this. */
const NEAREST_ALARM = 30_000;
/** How long one look may take: a store that another tab holds must not hold the next look as well. */
const PATIENCE = 20_000;

/** Why a look is taken. When a call is due and the lots can't be read, that itself is said. */
export type Because = 'call-due' | 'other';

/** Looks into the store again, one look after the other. */
export interface Lookout {
  /**
   * Works the alerts out from the store as it is now, says what is due, and asks to be woken for the next. Safe to call
   * at any time and any number of times.
   * @returns how many alerts were said
   */
  readonly lookAgain: (because?: Because) => Promise<number>;
}

export function lookout(world: World): Lookout {
  let queue: Promise<unknown> = Promise.resolve();
  const lookAgain: Lookout['lookAgain'] = (because = 'other') => {
    const mine = queue.then(() => inTime(world, look(world, because, callSoon), because));
    queue = mine.catch(world.report);
    return mine;
  };
  let callOff: () => void = () => undefined;
  /** An alarm can't ring sooner than half a minute from now; while this worker lives on, it need not wait for it. */
  function callSoon(ms: number): void {
    // However many looks were taken meanwhile, one more is enough.
    callOff();
    // What goes wrong in that look is reported by the queue.
    callOff = world.after(ms, () => void lookAgain('call-due').catch(() => undefined));
  }
  return { lookAgain };
}

async function look(world: World, because: Because, callSoon: (ms: number) => void): Promise<number> {
  const now = world.now();
  // Asked first: whatever happens to this worker from here on, another look follows.
  await world.wakeAt(UNFINISHED, instant(now + SOON), now);
  const wakeFor: WakeFor = async (when) => {
    await (when === null ? world.cancelWake(NEXT) : world.wakeAt(NEXT, when, now));
    if (when !== null && when < now + NEAREST_ALARM) callSoon(when - now);
  };
  const opened = await world.openStore();
  if (!opened.ok) return withoutStore(world, opened, because, wakeFor);
  const store: Store = opened.value;
  try {
    const said = await sayWhatIsDue(store, world, wakeFor);
    await world.clearNotice(HELD_NOTICE);
    await world.cancelWake(UNFINISHED);
    return said;
  } catch (error) {
    if (error instanceof StoreUnavailable) return withoutStore(world, error, because, wakeFor);
    // A look that fails must not be silent: whoever relies on the reminders has to know. It is taken again soon.
    world.report(error);
    return withoutStore(world, { reason: 'failed', message: cantWorkOut(error).message }, because, wakeFor);
  } finally {
    store.close();
  }
}

/** Gives up on a look that takes too long, so that the next one gets its turn; what it still does is done again then. */
function inTime(world: World, looking: Promise<number>, because: Because): Promise<number> {
  return new Promise((resolve, reject) => {
    const callOff = world.after(PATIENCE, () => {
      const now = world.now();
      withoutStore(world, HELD, because, async (when) => {
        if (when !== null) await world.wakeAt(NEXT, when, now);
      }).then(resolve, reject);
    });
    looking.then(resolve, reject).finally(callOff);
  });
}

const HELD: Refusal = { reason: 'held', message: 'Another tab or window holds them.' };

/**
 * The lots can't be read. What comes due is said from memory, the badge says what is wrong, and so does a notice: where
 * the user can mend it, or where a reminder is due and nobody can tell which.
 */
async function withoutStore(world: World, why: Refusal, because: Because, wakeFor: WakeFor): Promise<number> {
  const now: Instant = world.now();
  await world.wakeAt(UNFINISHED, instant(now + SOON), now);
  const said = await sayFromMemory(world, why, wakeFor);
  await world.showBadge({ text: '!', title: `Headroom can’t read its lots. ${why.message}`, urgent: true });
  if (!(await world.noticesAllowed())) return said ?? 0;
  await sayTrouble(world, why);
  if (said === null && because === 'call-due')
    await world.showNotice({
      id: HELD_NOTICE,
      title: 'A reminder is due, and your lots can’t be read',
      body: `Check what closes next. ${why.message}`,
      loudness: 'loud',
      buttons: [],
    });
  return said ?? 0;
}
