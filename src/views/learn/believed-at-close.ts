import type { LotFacts } from '../../domain/lot/lot.ts';
import { type Instant, instant } from '../../domain/time/instant.ts';
import { foldLot } from '../../folds/fold-lots.ts';
import type { LotState } from '../../folds/lot-state.ts';
import { countingInOrder } from '../../folds/undo.ts';
import type { Entry } from '../../journal/entry.ts';
import type { SetupState } from '../../journal/states/setup-state.ts';
import type { SetupsThen } from './setups-then.ts';

/** What was known of a lot, and the setup in force, at the moment that its forecasts are held against. */
export interface BelievedThen {
  readonly at: Instant;
  /** The lot came in only after that moment, so that what is known of it then is no forecast. */
  readonly late: boolean;
  readonly lot: LotState;
  readonly setup: SetupState;
  /** Who last put in what retail is estimated from; empty where nobody did. */
  readonly estimator: string;
}

/**
 * What was believed of a lot as its sale closed: until then a bid could still be raised or cut, so that is what it was
 * decided by. Nothing that was written later changes it, neither a new figure nor an undo of an old one.
 *
 * The moment is when the lot ended by the last word on it, or, where its end was noted even before that, when it was
 * first noted. A lot that came in after it ended gets what was known when its end was first noted, and is `late`.
 *
 * Looks at each entry about the lot twice, and at none about another lot.
 * @param born the lot as it came in
 * @param broughtBy who brought it in
 * @param aboutLot every entry about the lot, undos included
 * @returns null for a lot of which no end is noted
 */
export function believedAtClose(
  born: LotState,
  broughtBy: string,
  aboutLot: readonly Entry[],
  setups: SetupsThen,
): BelievedThen | null {
  const noted = countingInOrder(aboutLot).filter(({ happening }) => happening.kind === 'result-noted');
  const [first, last] = [noted[0], noted.at(-1)?.happening];
  if (first === undefined || last?.kind !== 'result-noted') return null;
  const ended = instant(Math.min(last.at, first.at));
  const late = born.addedAt > ended;
  const known = late
    ? (entry: Entry) => entry.id < first.id
    : (entry: Entry) => entry.at <= ended && entry.id < first.id;
  const counting = countingInOrder(aboutLot.filter(known)).filter(({ id }) => id > born.bornIn);
  return {
    at: ended,
    late,
    lot: foldLot(born, counting),
    setup: late ? setups.before(first) : setups.at(ended),
    estimator: counting.findLast(isEstimate)?.author ?? (saysRetail(born.facts) ? broughtBy : ''),
  };
}

const isEstimate = ({ happening }: Entry): boolean => happening.kind === 'lot-changed' && saysRetail(happening.set);

const saysRetail = ({ retail, comps, ceilings }: LotFacts): boolean => (retail ?? comps ?? ceilings) !== undefined;
