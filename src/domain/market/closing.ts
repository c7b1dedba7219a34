import type { Cents } from '../money/cents.ts';
import type { Instant } from '../time/instant.ts';
import type { MarketGroup } from './market-group.ts';

/** How a lot ended, as far as it tells what the strongest rival would have paid. The seller's reserve is a rival. */
export type Ending =
  /** We bought it; `unopposed` when nobody else bid, so that the price is only the opening bid. */
  | { readonly was: 'won'; readonly price: Cents; readonly unopposed?: boolean }
  /** Someone else bought it at this price, whether or not we bid. */
  | { readonly was: 'lost'; readonly price: Cents }
  /** Someone else bought it and the price is unknown. */
  | { readonly was: 'lost-unknown' }
  /** Nobody bought it: the reserve was above the highest bid, which may be known. */
  | { readonly was: 'no-sale'; readonly high?: Cents };

/** One close that was seen, and what it is held against. */
export interface Closing {
  readonly group: MarketGroup;
  readonly at: Instant;
  /**
   * Our own zero-profit hammer as it stood at the close: the price at which we would have earned nothing. Above 0.
   * Prices of different cars are compared as their ratio to it.
   */
  readonly zeroProfit: Cents;
  /** The step of the price at that height. Above 0. */
  readonly step: Cents;
  /** The highest bid that we had in; absent where we only watched. */
  readonly bid?: Cents;
  /** Bids were handed in unseen, and the winner paid his own. Then limits are what rivals bid there. */
  readonly sealed?: true;
  readonly ending: Ending;
}
