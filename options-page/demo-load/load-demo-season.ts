import type { DemoScenario } from '../../src/demo/demo-scenario.ts';
import { groupBy } from '../../src/domain/group-by.ts';
import { cents } from '../../src/domain/money/cents.ts';
import { type Instant, instant } from '../../src/domain/time/instant.ts';
import { DAY } from '../../src/domain/time/units.ts';
import { BOOKS, LOTS, SETUP, subjectOfLot } from '../../src/journal/subject.ts';
import type { Store } from '../../src/store/store.ts';

/**
 * Writes the setup and some months of past sales, each week with its purse, each piece at its own moment: what was believed before a sale must have been
 * written before it. The lots keep the ids that they were made with. Null when all went well, else why not.
 * @param setClock sets the clock by which the store writes
 */
export async function loadDemoSeason(
  store: Store,
  { setup, season }: Pick<DemoScenario, 'setup' | 'season'>,
  setClock: (to: Instant) => void,
): Promise<string | null> {
  setClock(instant(Math.min(...season.map(({ addedAt }) => addedAt)) - DAY));
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
  for (const [at, own] of groupBy(inTime, (piece) => piece.at)) {
    setClock(at);
    const written = await store.append(own.map(({ subject, happening }) => ({ subject, happening })));
    if (!written.ok) return written.message;
  }
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
