import type { DemoScenario } from '../../src/demo/demo-scenario.ts';
import { cents } from '../../src/domain/money/cents.ts';
import { type Instant, instant } from '../../src/domain/time/instant.ts';
import { DAY } from '../../src/domain/time/units.ts';
import { BOOKS, LOTS, SETUP, subjectOfLot } from '../../src/journal/subject.ts';
import type { Store } from '../../src/store/store.ts';

/** A clock that shows the next of the moments it was given at each look, and stays at the last. */
export interface PacedClock {
  readonly now: () => Instant;
  readonly set: (...moments: readonly Instant[]) => void;
}

export function pacedClock(start: Instant): PacedClock {
  let last = start;
  let ahead: readonly Instant[] = [];
  return {
    now() {
      [last = last, ...ahead] = ahead;
      return last;
    },
    set(...moments) {
      ahead = moments;
    },
  };
}

/**
 * Writes the setup and some months of past sales, each week with its purse, each piece at its own moment: what was believed before a sale must have been
 * written before it. The lots keep the ids that they were made with. Null when all went well, else why not.
 * @param clock the one by which the store writes; it looks once for each entry, so that all goes in with one write
 */
export async function loadDemoSeason(
  store: Store,
  { setup, season }: Pick<DemoScenario, 'setup' | 'season'>,
  clock: Pick<PacedClock, 'set'>,
): Promise<string | null> {
  clock.set(instant(Math.min(...season.map(({ addedAt }) => addedAt)) - DAY));
  const saved = await store.saveSetup(setup);
  if (!saved.ok) return saved.message;
  const pieces = season.flatMap(({ lot, addedAt, notes, booked }) => [
    { at: addedAt, subject: LOTS, happening: { kind: 'lots-added' as const, source: 'file' as const, lots: [lot] } },
    ...notes.map(({ at, happening }) => ({ at, subject: subjectOfLot(lot.id), happening })),
    ...booked.map(({ at, happening }) => ({ at, subject: BOOKS, happening })),
  ]);
  const weeks = new Set(season.map(({ addedAt }) => addedAt));
  const purses = [...weeks].map((at) => ({
    at,
    subject: SETUP,
    happening: { kind: 'purse-set' as const, purse: purseAt(at) },
  }));
  const inTime = [...purses, ...pieces].toSorted((a, b) => a.at - b.at);
  clock.set(...inTime.map(({ at }) => at));
  const written = await store.append(inTime.map(({ subject, happening }) => ({ subject, happening })));
  if (!written.ok) return written.message;
  // The purse of a week that is long over is none for this one.
  const emptied = await store.append([{ subject: SETUP, happening: { kind: 'purse-set', purse: null } }]);
  return emptied.ok ? null : emptied.message;
}

const purseAt = (countedAt: Instant) => ({
  cashCents: cents(1_800_000),
  lineCents: cents(9_000_000),
  places: 3,
  countedAt,
  until: 'weekend' as const,
});
