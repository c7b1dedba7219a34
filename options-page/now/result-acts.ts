import type { LotAct } from '../../src/acts/act.ts';
import type { Result } from '../../src/domain/sale/result.ts';
import type { EntryId } from '../../src/journal/ids.ts';
import type { AmountAct } from './amount-acts.tsx';

/**
 * The ways in which a lot commonly ends, each with one press.
 * @param corrects the result that the screen shows; null when there is none
 * @param early whether it ended before its close
 */
export function resultActs(corrects: EntryId | null, early: boolean): readonly AmountAct[] {
  const ended = (result: Result): LotAct => ({ do: 'ended', result, corrects, ...(early && { early }) });
  return [
    {
      words: (amount) => (amount === null ? 'Won at …' : `Won at ${amount}`),
      act: (cents) => (cents === null ? null : ended({ ended: 'won', hammerCents: cents })),
    },
    {
      words: (amount) => (amount === null ? 'Lost' : `Lost at ${amount}`),
      act: (cents) => ended({ ended: 'lost', ...(cents !== null && { hammerCents: cents }) }),
    },
    {
      words: () => 'Not sold',
      act: (cents) => ended({ ended: 'not-sold', ...(cents !== null && { highCents: cents }) }),
    },
  ];
}
