import type { ToDo } from '../../domain/after-sale/to-do.ts';
import { lotTitle } from '../../domain/lot/car-name.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import type { Instant } from '../../domain/time/instant.ts';
import type { LotState } from '../../folds/lot-state.ts';
import { useAfterVerbs } from '../hooks/use-after-verbs.ts';

/** What the button of each step says: the thing that is then true. */
const TAP_WORDS: Readonly<Record<NonNullable<ToDo['step']>, string>> = {
  pay: 'Paid',
  transport: 'Arranged',
  deliver: 'Delivered',
  inspect: 'Inspected',
  title: 'Title received',
  fund: 'Done',
  refund: 'Refund received',
};

export interface StepTapProps {
  readonly lot: LotState;
  readonly toDo: ToDo;
  /** When it was done; now, unless the user said another time. */
  readonly at: () => Instant;
}

/** Does a step with one tap. */
export function StepTap({ lot, toDo, at }: StepTapProps) {
  const { note } = useAfterVerbs();
  const { step, cents } = toDo;
  if (step === undefined) return null;
  const words = cents === undefined || cents === 0 ? TAP_WORDS[step] : `${TAP_WORDS[step]} ${formatMoney(cents)}`;
  return (
    <button
      type="button"
      aria-label={`${words}: ${lotTitle(lot.facts)}`}
      onClick={() =>
        note(lot, {
          kind: 'step-noted',
          step,
          done: true,
          at: at(),
          ...(cents !== undefined && cents > 0 && { cents }),
        })
      }
    >
      {words}
    </button>
  );
}
