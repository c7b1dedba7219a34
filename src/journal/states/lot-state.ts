import type { Bidding } from '../../domain/bid/bidding.ts';
import type { Evidence } from '../../domain/lot/evidence.ts';
import type { LotFacts, LotId, LotSource } from '../../domain/lot/lot.ts';
import type { PlanChoice } from '../../domain/plan/plan-lot.ts';
import type { Instant } from '../../domain/time/instant.ts';
import type { EntryId } from '../ids.ts';
import type { AfterSaleState } from './after-sale-state.ts';
import type { ClockState } from './clock-state.ts';
import type { KeptAttachment } from './kept-attachment.ts';
import type { SaleState } from './sale-state.ts';

/** A lot as the journal leaves it: the fold of every entry about it, in the order of their ids. */
export interface LotState {
  readonly id: LotId;
  readonly facts: LotFacts;
  /** Where each field's present value came from, by field name. */
  readonly evidence: Readonly<Record<string, Evidence>>;
  readonly source: LotSource;
  readonly addedAt: Instant;
  readonly changedAt: Instant;
  /** What happened at its sale; absent until something did. */
  readonly sale?: SaleState;
  /** Prices seen and bids of ours, each with its time; absent until there is more than the price that it came in with. */
  readonly bidding?: Bidding;
  /** Files that are kept with it, in the order in which they came; absent until there is one. */
  readonly attachments?: readonly KeptAttachment[];
  /** What followed the hammer: steps after a win, disputes; absent until something did. */
  readonly after?: AfterSaleState;
  /** What was said back to its alerts; absent until something was. */
  readonly clock?: ClockState;
  /** What the user told the plan about it; absent until he said something. */
  readonly planChoice?: PlanChoice | null;
  /** No longer watched; kept because nothing is ever deleted. */
  readonly dropped: boolean;
  /** The entry that brought it in (perhaps together with others). */
  readonly bornIn: EntryId;
}
