import { undoesSale } from '../../../domain/dispute/dispute.ts';
import { groupBy } from '../../../domain/group-by.ts';
import type { KnownTimes, TimedLot } from '../../../domain/learn/corrections/win-outcomes.ts';
import type { PastLot } from '../../../domain/learn/happened.ts';
import type { LotId } from '../../../domain/lot/lot.ts';
import { startOfDay } from '../../../domain/time/calendar-day.ts';
import { type Instant, instant } from '../../../domain/time/instant.ts';
import type { Zone } from '../../../domain/time/zone.ts';
import type { LotState } from '../../../folds/lot-state.ts';
import type { BooksState } from '../../../journal/states/books-state.ts';

/** Past lots with when the last word on each thing about them was written down. */
export function timedLots(
  past: readonly PastLot[],
  lots: readonly LotState[],
  books: BooksState,
  zone: Zone,
): readonly TimedLot[] {
  const states = new Map(lots.map((lot) => [lot.id, lot]));
  const bills = groupBy(books.costs, ({ lot }) => lot);
  return past.flatMap((one) => {
    const state = states.get(one.lot);
    return state === undefined ? [] : [{ past: one, known: knownTimes(state, one.lot) }];
  });

  function knownTimes({ sale, after }: LotState, id: LotId): KnownTimes {
    const outcome = books.outcomes.get(id);
    const billed = bills.get(id) ?? [];
    const canceled = (after?.disputes ?? []).flatMap(({ outcome: end }) =>
      end !== undefined && undoesSale(end.ended) ? [end.notedAt] : [],
    );
    return {
      ended: sale?.result?.notedAt ?? instant(0),
      ...(outcome !== undefined && { sold: outcome.notedAt, soldOn: startOfDay(outcome.date, zone) }),
      ...(billed.length > 0 && { billed: latest(billed.map(({ notedAt }) => notedAt)) }),
      ...(canceled.length > 0 && { canceled: latest(canceled) }),
    };
  }
}

const latest = (times: readonly Instant[]): Instant => instant(Math.max(...times));
