import type { BidState } from '../domain/bid/bid-state.ts';
import type { Cents } from '../domain/money/cents.ts';
import type { Increments } from '../domain/price/increments.ts';
import type { Setup } from '../domain/setup/setup.ts';
import type { Instant } from '../domain/time/instant.ts';
import { sayClock, sayTime } from '../domain/time/say-time.ts';
import { dateIn } from '../domain/time/wall-clock.ts';
import type { LotState } from '../folds/lot-state.ts';
import type { Change } from '../journal/make-entry.ts';
import type { Question } from './question.ts';

/** What is worked out of a lot at this moment. */
export interface Worked {
  /** Null when no price works; undefined when it can't be worked out. */
  readonly maxBid: Cents | null | undefined;
  /** What the plan bids; null when it leaves the lot out, absent where there is no plan for it. */
  readonly planned?: Cents | null | undefined;
  /** The chance that the planned bid wins, in millionths, where there is one. */
  readonly plannedChance?: number | undefined;
  readonly increments: Increments | undefined;
  readonly bid: BidState;
}

/** What an act hangs on beside the lot. */
export interface Circumstances {
  readonly now: Instant;
  readonly setup: Pick<Setup, 'alerts' | 'store'>;
  /** In whose name this browser writes. */
  readonly author: string;
  /** Who else may have bid. */
  readonly people: readonly string[];
  readonly work: (lot: LotState) => Worked;
  /** The max bid as it was believed at the close, where that is another moment than now. */
  readonly maxBidAtClose?: { readonly cents: Cents | null | undefined } | undefined;
  /** The month of its sale is closed in the books. */
  readonly monthClosed?: boolean;
}

/** What becomes of an act. */
export type Decision =
  /** It is kept, all of it or nothing; `words` say what was done. */
  | { readonly as: 'write'; readonly changes: readonly Change[]; readonly words: string }
  /** Something has to be answered first. Nothing is kept yet, and what was typed stays. */
  | { readonly as: 'ask'; readonly question: Question }
  /** It can't be kept, for the reason that the sentence gives. */
  | { readonly as: 'refuse'; readonly message: string }
  /** It is kept already, by whoever. */
  | { readonly as: 'nothing'; readonly message: string };

export const refuseAct = (message: string): Decision => ({ as: 'refuse', message });
export const askFirst = (question: Question): Decision => ({ as: 'ask', question });

/** The clock alone for today, else with its day. */
export function when(at: Instant, { now, setup }: Pick<Circumstances, 'now' | 'setup'>): string {
  const { zone } = setup.store;
  return dateIn(zone, at) === dateIn(zone, now) ? sayClock(at, zone) : sayTime(at, zone);
}
