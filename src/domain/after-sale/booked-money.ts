import type { CostKind } from '../accounts/cost-kind.ts';
import { type Cents, ZERO } from '../money/cents.ts';

/** One line that the sale billed. */
export interface SaleBill {
  readonly cost: CostKind;
  readonly cents: Cents;
  readonly paid: 'owed' | 'bank';
}

/** What the books know of a won lot's money. */
export interface BookedMoney {
  /** What the sale billed, and what a dispute took off or put on. */
  readonly bills: readonly SaleBill[];
  /** What disputes brought us, as far as it is booked; it stands among the bills, the other way round. */
  readonly settled: Cents;
  /** Owed to others, a carrier or a shop; below zero when too much was paid. */
  readonly others: Cents;
}

export const NOTHING_BOOKED: BookedMoney = { bills: [], settled: ZERO, others: ZERO };
