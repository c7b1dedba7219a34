import type { Deadline } from '../domain/alerts/deadline.ts';
import type { Setup } from '../domain/setup/setup.ts';
import type { Instant } from '../domain/time/instant.ts';
import { DAY } from '../domain/time/units.ts';
import type { Store } from '../store/store.ts';
import { afterSaleDeadlines } from '../views/after-sale/after-sale-deadlines.ts';

/** Where deadlines come from that are no closings. Each gives those in which something is left to do at `now`. */
export type DeadlineSource = (given: {
  readonly store: Store;
  readonly setup: Setup;
  readonly now: Instant;
}) => Promise<readonly Deadline[]>;

/** Longer than any sale lets a claim or a title wait. */
const AFTER_SALE = 400 * DAY;

/** What is left to do after a sale: paying, papers, the time in which a claim can be made, disputes; of lots no longer watched as well. */
const afterSale: DeadlineSource = async ({ store, setup, now }) => {
  const lots = await store.lotsAfterSale();
  const followed = lots.filter(
    ({ sale, after }) => after?.disputed === 'open' || (sale?.result?.at ?? now) > now - AFTER_SALE,
  );
  return followed.length === 0 ? [] : afterSaleDeadlines(followed, await store.books(), setup, now);
};

/** Add a source here, and its deadlines are called like closings: at every wake they are worked out anew. */
const DEADLINE_SOURCES: readonly DeadlineSource[] = [afterSale];

/**
 * Every deadline of every source.
 * @param report told when a source fails, which costs neither the other sources nor the calls of lots
 */
export async function deadlinesOf(
  given: Parameters<DeadlineSource>[0],
  report: (error: unknown) => void,
): Promise<readonly Deadline[]> {
  const answers = await Promise.allSettled(DEADLINE_SOURCES.map((source) => source(given)));
  return answers.flatMap((answer) => {
    if (answer.status === 'fulfilled') return answer.value;
    report(answer.reason);
    return [];
  });
}
