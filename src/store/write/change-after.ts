import type { LotId } from '../../domain/lot/lot.ts';
import type { Outcome } from '../../domain/outcome.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { Entry } from '../../journal/entry.ts';
import type { Change } from '../../journal/make-entry.ts';
import { appendWith } from './append.ts';
import { readHead } from './head.ts';
import { Refused } from './refused.ts';
import type { Session } from './session.ts';

/** Decides and writes in one transaction: whoever presses at the same moment, here or in another tab, decides after it. */
export function changeAfter(
  session: Session,
  id: LotId,
  decide: (lot: LotState, author: string) => readonly Change[],
): Promise<Outcome<readonly Entry[]>> {
  return appendWith(session, async (tx) => {
    const [lot, { author }] = await Promise.all([tx.objectStore('lots').get(id), readHead(tx)]);
    if (lot === undefined) throw new Refused('no-such-lot', 'This lot is no longer on your list.');
    return decide(lot, author);
  });
}
