import type { LotAct } from '../../src/acts/act.ts';
import { formatMoney } from '../../src/domain/money/format-money.ts';
import type { Result } from '../../src/domain/sale/result.ts';
import type { Instant } from '../../src/domain/time/instant.ts';
import type { EntryId } from '../../src/journal/ids.ts';
import type { AmountAct } from './amount-acts.tsx';
import type { NowLot } from './now-lot.ts';

/** One tap. */
export interface QuickAct {
  readonly words: string;
  readonly act: LotAct;
}

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

/**
 * The same for one tap each, at the last price that was seen; the likeliest first. Nobody wins without a price, and a loss
 * below our own bid would be a doubt: there the price is left out, which is not known then.
 */
export function quickResults({ state, bidAt }: NowLot, now: Instant): readonly QuickAct[] {
  const { facts, sale } = state;
  const price = facts.priceNow ?? null;
  const { binding } = bidAt(now).own;
  const ours = binding !== undefined && (price === null || price <= binding.cents);
  const [won, lost, notSold] = resultActs(sale?.result?.entry ?? null, false).map(({ words, act }, index) => {
    const cents = index === 1 && ours ? null : price;
    const wanted = act(cents);
    return wanted === null ? [] : [{ words: words(cents === null ? null : formatMoney(cents), cents), act: wanted }];
  });
  return [...(ours ? [won, lost] : [lost, won]), notSold].flatMap((one) => one ?? []);
}
