import { type ClockCorrection, correctionsIn } from '../domain/time/clock-correction.ts';
import { type Instant, instant } from '../domain/time/instant.ts';
import { MINUTE } from '../domain/time/units.ts';
import type { Store } from '../store/store.ts';
import type { World } from './world.ts';

/** What is written this much later than now can't have been: the clock stood otherwise then. */
const TOLERANCE = MINUTE;
/** Looks follow each other within two minutes, so a step of the clock is known that well. */
const STEP_IS_KNOWN_TO = 5 * MINUTE;

/** What the clock is known to have done. */
export interface ClockSeen {
  /** The keys that count as said. */
  readonly shown: ReadonlySet<string>;
  /** The keys of what was said while the clock stood otherwise, and so is said again. */
  readonly again: readonly string[];
  readonly corrections: readonly ClockCorrection[];
  /** What the clock showed when Headroom last looked or, after a start of the browser, last wrote; null when it never did. */
  readonly lastSeen: Instant | null;
}

/** What memory holds about the clock. */
interface Before {
  /** What it showed at the last look. */
  readonly wall: Instant;
  /** When it was last put back while the browser ran, and what was struck out then. */
  readonly back?: ClockCorrection & { readonly keys: readonly string[] };
}

const NAME = 'clock';

/**
 * Finds out whether the clock was put. One that has gone back had stood ahead, as far as anyone can tell: what it made us
 * say counts as said too early, and the journal keeps that. When it goes forward again by as much, the step back was the
 * slip, and what was said before it counts again.
 */
export async function seeClock(
  store: Store,
  world: World,
  recorded: ReadonlyMap<string, Instant>,
  now: Instant,
): Promise<ClockSeen> {
  const before = await world.recall<Before>(NAME);
  const written = await store.lastWritten();
  const showed = Math.max(before?.wall ?? 0, written ?? 0);
  if (showed > now + TOLERANCE) return putBack(store, world, recorded, { showed: instant(showed), to: now });
  const corrections = correctionsIn(recorded.keys());
  const back = before?.back;
  const lastSeen = before?.wall ?? written;
  const shown = new Set(recorded.keys());
  if (before === undefined || back === undefined || !isForwardAgain(before.wall, back, now)) {
    await world.remember<Before>(NAME, { wall: now, ...(back && { back }) });
    return { shown, again: back?.keys ?? [], corrections, lastSeen };
  }
  await store.recordShown(back.keys);
  await world.remember<Before>(NAME, { wall: now });
  return { shown: new Set([...shown, ...back.keys]), again: [], corrections, lastSeen };
}

async function putBack(
  store: Store,
  world: World,
  recorded: ReadonlyMap<string, Instant>,
  correction: ClockCorrection,
): Promise<ClockSeen> {
  const keys = [...recorded].filter(([, at]) => at > correction.to + TOLERANCE).map(([key]) => key);
  const struck = keys.filter((key) => correctionsIn([key]).length === 0);
  const shown = new Set(recorded.keys());
  for (const key of struck) shown.delete(key);
  // Where it can't be written down, it is seen again at the next look.
  const written = await store.putClockRight({ ...correction, keys: struck });
  if (written.ok) await world.remember<Before>(NAME, { wall: correction.to, back: { ...correction, keys: struck } });
  return { shown, again: struck, corrections: [correction, ...correctionsIn(recorded.keys())], lastSeen: null };
}

const isForwardAgain = (wall: Instant, { showed, to }: ClockCorrection, now: Instant): boolean =>
  now - wall > STEP_IS_KNOWN_TO && Math.abs(now - wall - (showed - to)) < STEP_IS_KNOWN_TO;
