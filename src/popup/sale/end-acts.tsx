import type { LotAct } from '../../acts/act.ts';
import type { Cents } from '../../domain/money/cents.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import { parseMoney } from '../../domain/money/parse-money.ts';
import type { Result } from '../../domain/sale/result.ts';
import type { EntryId } from '../../journal/ids.ts';

interface EndActsProps {
  /** What stands in the amount's box. */
  readonly text: string;
  /** The price that counts where the box is empty: what the lot last stood at. */
  readonly fallback: Cents | undefined;
  /** The result that is shown; null when there is none. */
  readonly corrects: EntryId | null;
  /** Whether it ended before its close. */
  readonly early: boolean;
  readonly onFault: (sentence: string) => void;
  readonly onAct: (act: LotAct) => void;
}

/** How it ended, in one tap each. */
export function EndActs({ text, fallback, corrects, early, onFault, onAct }: EndActsProps) {
  const empty = text.trim() === '';
  const end = (result: Result) => onAct({ do: 'ended', result, corrects, ...(early && { early }) });
  const endAt = (ended: 'won' | 'lost') => {
    const typed = empty ? undefined : parseMoney(text);
    if (typed?.ok === false) return onFault(typed.message);
    const amount = typed?.value;
    if (ended === 'lost') return end(amount === undefined ? { ended } : { ended, hammerCents: amount });
    const hammerCents = amount ?? fallback;
    if (hammerCents === undefined) return onFault('Won at what hammer price? Type it first.');
    return end({ ended, hammerCents });
  };
  return (
    <div class="row">
      <button type="button" onClick={() => endAt('won')}>
        {empty && fallback !== undefined ? `Won at ${formatMoney(fallback)}` : 'Won at this'}
      </button>
      <button type="button" onClick={() => endAt('lost')}>
        {empty ? 'Lost, price unknown' : 'Lost at this'}
      </button>
      <button type="button" onClick={() => end({ ended: 'not-sold' })}>
        Not sold
      </button>
      <button type="button" onClick={() => end({ ended: 'pending' })}>
        Pending
      </button>
      <button type="button" onClick={() => end({ ended: 'withdrawn' })}>
        Withdrawn
      </button>
      <button type="button" onClick={() => end({ ended: 'not-watched' })}>
        Unknown, nobody watched
      </button>
    </div>
  );
}
