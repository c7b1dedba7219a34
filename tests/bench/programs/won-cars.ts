import { closeInStoreTime, type DemoVenue } from '../../../src/demo/demo-closes.ts';
import { demoScenario } from '../../../src/demo/demo-scenario.ts';
import { seasonBooks } from '../../../src/demo/demo-season-books.ts';
import { demoVin } from '../../../src/demo/demo-vin.ts';
import type { LotFacts, LotId } from '../../../src/domain/lot/lot.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { addDays } from '../../../src/domain/time/calendar-day.ts';
import { type Instant, instant } from '../../../src/domain/time/instant.ts';
import { DAY } from '../../../src/domain/time/units.ts';
import { dateIn } from '../../../src/domain/time/wall-clock.ts';
import { pricingContext } from '../../../src/domain/worksheet/pricing-context.ts';
import type { Change } from '../../../src/journal/make-entry.ts';
import { BOOKS, LOTS, subjectOfLot } from '../../../src/journal/subject.ts';

/** So many cars are won in a week, and each third one is not sold yet when the next week begins. */
const A_WEEK = 26;

/** The changes that won cars make in the journal: each batch of cars comes in, is won and billed, and some are sold. */
export function* wonCars(from: number, count: number, now: Instant, ids: () => LotId): Generator<Change[]> {
  const { season, setup } = demoScenario(now, ids);
  const context = pricingContext(setup);
  const weeks = Math.ceil((from + count) / A_WEEK);
  const today = dateIn(setup.store.zone, now);
  for (let first = from; first < from + count; first += A_WEEK) {
    const batch = Array.from({ length: Math.min(A_WEEK, from + count - first) }, (_, i) => {
      const n = first + i;
      const model = season[n % season.length]?.lot.facts ?? {};
      const day = addDays(today, -7 * (weeks - Math.floor(n / A_WEEK)) + (n % 5));
      const at = instant(Date.parse(`${day}T20:00Z`));
      const facts: LotFacts = {
        ...model,
        vin: demoVin('1ZL', 2021, n),
        lotNumber: String(1000 + n),
        close: closeInStoreTime((model.venueId ?? 'saguaro') as DemoVenue, day, '13:00', now),
      };
      const hammer = cents(Math.round((model.retail?.likely ?? 2_000_000) * 0.0062) * 100);
      return { n, day, at, lot: ids(), facts, hammer };
    });
    const lots = batch.map(({ lot, facts }) => ({ id: lot, facts, evidence: {} }));
    yield [
      { subject: LOTS, happening: { kind: 'lots-added', source: 'file', lots } },
      ...batch.flatMap(({ lot, hammer, at }): Change[] => [
        {
          subject: subjectOfLot(lot),
          happening: { kind: 'result-noted', result: { ended: 'won', hammerCents: hammer }, at, by: 'proxy' },
        },
        {
          subject: subjectOfLot(lot),
          happening: { kind: 'step-noted', step: 'deliver', done: true, at: instant(at + 5 * DAY) },
        },
      ]),
      ...batch.flatMap(({ n, ...win }) =>
        seasonBooks(win, n, context, now).map(({ happening }) => ({ subject: BOOKS, happening })),
      ),
    ];
  }
}
