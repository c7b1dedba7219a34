import type { DisputeRecord } from '../dispute/dispute.ts';
import { undoesSale } from '../dispute/dispute.ts';
import type { LotFacts } from '../lot/lot.ts';
import type { Cents } from '../money/cents.ts';
import type { Result } from '../sale/result.ts';
import type { Instant } from '../time/instant.ts';
import type { BookedMoney } from './booked-money.ts';
import type { SaleEvents } from './due.ts';
import { doneAt, type StepsDone } from './win-step.ts';

/** All that is known of a lot once its sale is over. */
export interface SoldLot {
  readonly facts: LotFacts;
  readonly ended?: { readonly result: Result; readonly at: Instant } | undefined;
  /** What was done, wherever it was noted: a payment, say, with a tap or in the books. */
  readonly steps: StepsDone;
  readonly disputes: readonly DisputeRecord[];
  /** What the books know of its money beside the payments, which are steps. */
  readonly booked?: BookedMoney | undefined;
}

/** The hammer price of a win; undefined when it was not one. A sale that was undone since was one all the same. */
export const hammerOf = ({ ended }: SoldLot): Cents | undefined =>
  ended?.result.ended === 'won' ? ended.result.hammerCents : undefined;

/** Whether a win still stands: no dispute about it ended with the sale undone or the car sold again. */
export const winStands = (lot: SoldLot): boolean =>
  hammerOf(lot) !== undefined &&
  !lot.disputes.some(({ outcome }) => outcome !== undefined && undoesSale(outcome.ended));

/** When things happened that deadlines count from. */
export function eventsOf({ facts, ended, steps }: SoldLot): SaleEvents {
  const sale = ended?.at ?? facts.close?.instant;
  const [payment, delivery, title] = [doneAt(steps, 'pay'), doneAt(steps, 'deliver'), doneAt(steps, 'title')];
  return {
    ...(sale !== undefined && { sale }),
    ...(payment !== undefined && { payment }),
    ...(delivery !== undefined && { delivery }),
    ...(title !== undefined && { title }),
  };
}
