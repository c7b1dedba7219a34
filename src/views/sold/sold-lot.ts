import type { SoldLot } from '../../domain/after-sale/win.ts';
import type { NotedStepName, StepDone } from '../../domain/after-sale/win-step.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { Noted } from '../../journal/states/noted.ts';
import type { BookedLot } from './booked-lot.ts';

/** A step that was done, with the entry that says so; `inBooks` when that entry was made there. */
export type KnownStep = StepDone & Noted & { readonly inBooks?: true };

/** A lot after its sale with what is known of it in either place. */
export interface KnownLot extends SoldLot {
  readonly steps: Readonly<Partial<Record<NotedStepName, readonly KnownStep[]>>>;
}

/**
 * A lot as the rules about the time after the hammer see it. What was noted with a tap and what was booked are one: each
 * payment is one entry of the journal, in whichever of the two places it was made.
 * @param booked what the books say of it
 */
export function soldLotOf(
  { facts, sale, after }: Pick<LotState, 'facts' | 'sale' | 'after'>,
  booked?: BookedLot,
): KnownLot {
  const steps = after?.steps ?? {};
  return {
    facts,
    ...(sale?.result !== undefined && { ended: sale.result }),
    steps: booked === undefined ? steps : withBooked(steps, booked),
    disputes: after?.disputes ?? [],
    ...(booked !== undefined && { booked: booked.money }),
  };
}

function withBooked(steps: KnownLot['steps'], { pay, refund, fund, title }: BookedLot): KnownLot['steps'] {
  const together: [NotedStepName, readonly KnownStep[]][] = [
    ['pay', inOrder(steps.pay, pay)],
    ['refund', inOrder(steps.refund, refund)],
    ['fund', inOrder(steps.fund, fund)],
  ];
  const noted = steps.title?.at(-1);
  // Of the title the last word holds, whoever had it.
  if (title !== undefined && (noted === undefined || title.entry > noted.entry))
    together.push(['title', title.date === undefined ? [] : [{ ...title, inBooks: true }]]);
  const all = { ...steps };
  for (const [step, done] of together) {
    if (done.length > 0) all[step] = done;
    else delete all[step];
  }
  return all;
}

const inOrder = (noted: readonly KnownStep[] = [], booked: readonly KnownStep[]): readonly KnownStep[] =>
  booked.length === 0 ? noted : [...noted, ...booked].sort((a, b) => a.at - b.at);
