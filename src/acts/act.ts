import type { Cents } from '../domain/money/cents.ts';
import type { PlanChoice } from '../domain/plan/plan-lot.ts';
import type { BidAction } from '../domain/sale/bid-action.ts';
import type { Result } from '../domain/sale/result.ts';
import type { CloseTime } from '../domain/time/close-time.ts';
import type { Instant } from '../domain/time/instant.ts';
import type { EntryId } from '../journal/ids.ts';

/** The page on which something was done, and a picture of it that is kept with the lot. */
export type Receipt = Pick<BidAction, 'page' | 'picture'>;

/** Whatever was asked about an act and answered with yes: it is not asked again. */
interface Sure {
  readonly sure?: readonly QuestionCode[];
}

/** Something that is done to the reminders of a lot, or to who watches it. */
export type ClockAct =
  | { readonly do: 'put-off'; readonly minutes: number }
  /** `from` is the close it was said of: pressed twice, time is added once. */
  | { readonly do: 'extended'; readonly minutes: number; readonly from: Instant }
  | { readonly do: 'hand-over'; readonly to: string }
  /** Who uses this computer has it, and says so to the team. */
  | { readonly do: 'have-it'; readonly as: string }
  | { readonly do: 'take-back' }
  | { readonly do: 'done' }
  /** Minutes before the close, the earliest call first; null goes back to the rules. */
  | { readonly do: 'call-at'; readonly leadMinutes: readonly number[] | null }
  /** Of several readings of its close, the right one. */
  | { readonly do: 'pick-close'; readonly at: Instant }
  /** When it closes, typed; absent takes the close away. */
  | (Sure & { readonly do: 'set-close'; readonly close?: CloseTime | undefined });

/** A bid that somebody says he made; whether it is placed, raised or cut follows from what stands. */
export interface BidMade extends Sure {
  readonly do: 'bid';
  readonly how: 'proxy' | 'live';
  readonly cents: Cents;
  /** Who, when that is not the one who writes. */
  readonly by?: string | undefined;
  /** He bids past the plan, and wants to hear no more of it for this lot. */
  readonly ignorePlan?: boolean;
  /** Why it is above the max bid; empty when he gave no reason. */
  readonly why?: string | undefined;
  /** It is written down after the close, and was made before. */
  readonly beforeClose?: boolean;
  /** It was one press on a button that named the amount, and may be older than what is known now. */
  readonly offered?: boolean;
  /** The proxy that stood on the screen when it was typed; null for none. */
  readonly was?: Cents | null;
  /** The right price now, where the one that is known is wrong. */
  readonly price?: Cents | undefined;
  readonly receipt?: Receipt | undefined;
}

export type BidAct =
  | BidMade
  /** `released`: the venue let us go. */
  | (Sure & { readonly do: 'withdraw'; readonly released?: boolean })
  | {
      readonly do: 'saw';
      readonly what: 'confirmation-seen' | 'result-seen';
      readonly says?: BidAction['says'];
      readonly cents?: Cents | undefined;
      readonly receipt?: Receipt | undefined;
    }
  /** The price now, typed. */
  | { readonly do: 'price'; readonly cents: Cents }
  | { readonly do: 'accept-risk'; readonly why: string };

/** What the plan is told about a lot; null takes it back. */
export interface PlanAct {
  readonly do: 'plan';
  readonly choice: PlanChoice | null;
}

/** How it ended. */
export interface Ended extends Sure {
  readonly do: 'ended';
  readonly result: Result;
  /** It ended before its close. */
  readonly early?: boolean;
  /** How we bid, where that was said. */
  readonly by?: 'proxy' | 'live' | undefined;
  /** Who bid, where that was said. */
  readonly bidder?: string | undefined;
  /** Who made a live bid that nobody noted, so that it is noted now. */
  readonly liveBy?: string | undefined;
  readonly bidWasIn?: boolean | undefined;
  /** Which of two readings of its close was right. */
  readonly closedAt?: Instant | undefined;
  /** The result that he who answers has before him; null when there was none. Absent: he corrects what is there. */
  readonly corrects?: EntryId | null | undefined;
}

/** What a user can do about a lot at its sale. Every screen, every notice and the popup send one of these. */
export type LotAct = ClockAct | BidAct | PlanAct | Ended;

/** What can be asked before an act is kept. */
export type QuestionCode =
  | 'after-close'
  | 'off-step'
  | 'far-off'
  | 'over-max'
  | 'over-plan'
  | 'price'
  | 'changed'
  | 'released'
  | 'why'
  | 'early'
  | 'which-close'
  | 'other-result'
  | 'below-price'
  | 'was-in'
  | 'who-bid'
  | 'month-closed'
  | 'passed';
