import type { Cents } from '../money/cents.ts';
import type { Result } from '../sale/result.ts';
import type { Instant } from '../time/instant.ts';

/** A question that only a person can answer, as data: its words are in ask-words.ts, its answers in the acts. */
export type BidAsk =
  /** Before the close. */
  | { readonly ask: 'price-now'; readonly price: Cents; readonly seenAt: Instant; readonly bid: Cents }
  | { readonly ask: 'which-price'; readonly was: Cents; readonly now: Cents }
  | { readonly ask: 'high-bidder'; readonly price: Cents }
  | { readonly ask: 'cut-taken'; readonly bid: Cents }
  | { readonly ask: 'raise-right'; readonly bid: Cents; readonly price: Cents }
  | { readonly ask: 'went-in'; readonly bid: Cents; readonly price?: Cents | undefined }
  | { readonly ask: 'live-stands'; readonly bid: Cents; readonly proxy?: Cents | undefined }
  | { readonly ask: 'which-bid'; readonly bids: readonly { readonly cents: Cents; readonly by: string }[] }
  | { readonly ask: 'replaced'; readonly by: string; readonly was: Cents; readonly now: Cents }
  | { readonly ask: 'released'; readonly price: Cents }
  | { readonly ask: 'why-over' }
  | { readonly ask: 'cut-or-accept'; readonly to: Cents | null }
  | { readonly ask: 'no-max-bid' }
  | { readonly ask: 'sale-moved'; readonly from: Instant; readonly to: Instant }
  | { readonly ask: 'which-close'; readonly first: Instant; readonly last: Instant; readonly between: boolean }
  | { readonly ask: 'no-close' }
  /** After it. */
  | { readonly ask: 'how-ended' }
  | { readonly ask: 'was-in'; readonly bid: Cents; readonly how: 'proxy' | 'live' | 'sealed' }
  | { readonly ask: 'who-bid'; readonly amount: Cents; readonly bid?: Cents | undefined }
  | { readonly ask: 'ended-early'; readonly close: Instant }
  | { readonly ask: 'which-result'; readonly results: readonly [Result, Result] };
