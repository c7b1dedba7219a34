import { ownBids } from '../../domain/bid/own-bids.ts';
import type { LotFacts, LotId } from '../../domain/lot/lot.ts';
import type { Closing, Ending } from '../../domain/market/closing.ts';
import { closingWeight } from '../../domain/market/market.ts';
import { type GroupFacts, marketGroups } from '../../domain/market/market-groups.ts';
import type { Cents } from '../../domain/money/cents.ts';
import { zeroProfitAt } from '../../domain/plan/priced-lot.ts';
import type { Increments } from '../../domain/price/increments.ts';
import { nextPrice } from '../../domain/price/price-grid.ts';
import type { Instant } from '../../domain/time/instant.ts';
import type { PricingContext } from '../../domain/worksheet/pricing-context.ts';
import type { LotState } from '../../folds/lot-state.ts';
import { biddingOf } from '../../journal/states/lot-bidding.ts';

/** One close as it is kept beside the plan, so that what was believed long ago is worked out once. */
export interface KeptClosing {
  readonly lot: LotId;
  /** Changes when what is known of the lot's end does. */
  readonly key: string;
  /** Null where what was believed at the close gives no price to compare with. */
  readonly close: Omit<Closing, 'group'> | null;
  readonly facts: GroupFacts;
}

/** Lots whose end says something of what others would pay, with the key of each. */
export function lotsThatClosed(lots: readonly LotState[]): readonly { readonly lot: LotState; readonly key: string }[] {
  return lots.flatMap((lot) => {
    const noted = lot.sale?.result;
    if (noted === undefined || endingOf(lot) === null) return [];
    return [{ lot, key: `${noted.entry} ${lot.changedAt}` }];
  });
}

/**
 * A close as the plan learns from it.
 * @param then what was known of the lot as it closed, and the setup that held
 */
export function keptClosing(
  { lot, key }: { readonly lot: LotState; readonly key: string },
  then: { readonly facts: LotFacts; readonly context: PricingContext } | null,
): KeptClosing {
  const { titleId, venueId, venueName, make, model, seller, sealed } = lot.facts;
  const facts = {
    ...(titleId !== undefined && { titleId }),
    ...(venueId !== undefined && { venueId }),
    ...(venueName !== undefined && { venueName }),
    ...(make !== undefined && { make }),
    ...(model !== undefined && { model }),
    ...(seller !== undefined && { seller }),
    ...(sealed !== undefined && { sealed }),
  };
  return { lot: lot.id, key, facts, close: then === null ? null : closeOf(lot, then) };
}

function closeOf(
  lot: LotState,
  then: { readonly facts: LotFacts; readonly context: PricingContext },
): KeptClosing['close'] {
  const noted = lot.sale?.result;
  const ending = endingOf(lot);
  const zeroProfit = zeroProfitAt(then.facts, then.context);
  if (noted === undefined || ending === null || !zeroProfit.ok) return null;
  // A bid that was not in set no price.
  const bid = noted.bidWasIn === false ? undefined : ownBids(biddingOf(lot).bids).binding?.cents;
  return {
    at: noted.at,
    zeroProfit: zeroProfit.value,
    step: stepAt(then, amountOf(ending) ?? zeroProfit.value),
    ...(bid !== undefined && { bid }),
    ...(lot.facts.sealed !== undefined && { sealed: true }),
    ending,
  };
}

/** The closings that say something, each in its group as a weekend sees it. */
export function closingsOf(
  kept: readonly KeptClosing[],
  weekendFrom: Instant,
): {
  readonly closings: readonly Closing[];
  readonly groupOf: ReturnType<typeof marketGroups>;
} {
  const telling = kept.flatMap(({ close, facts }) => (close === null ? [] : [{ close, facts }]));
  const groupOf = marketGroups(
    telling.map(({ close, facts }) => ({ facts, weight: closingWeight(close.at, weekendFrom) })),
  );
  const closings = telling.map(({ close, facts }) => ({ ...close, group: groupOf(facts) }));
  return { closings, groupOf };
}

/** Null where nothing is known of what others would have paid: it was withdrawn, waits for the seller, or nobody looked. */
function endingOf({ sale }: LotState): Ending | null {
  const result = sale?.result?.result;
  switch (result?.ended) {
    case 'won':
      return { was: 'won', price: result.hammerCents };
    case 'lost':
      return result.hammerCents === undefined ? { was: 'lost-unknown' } : { was: 'lost', price: result.hammerCents };
    case 'not-sold':
      return { was: 'no-sale', ...(result.highCents !== undefined && { high: result.highCents }) };
    default:
      return null;
  }
}

function amountOf(ending: Ending): Cents | undefined {
  if (ending.was === 'lost-unknown') return undefined;
  return ending.was === 'no-sale' ? ending.high : ending.price;
}

/** The step of the sale at a price. */
function stepAt(
  { facts, context }: { readonly facts: LotFacts; readonly context: PricingContext },
  price: Cents,
): Cents {
  const { increment } = facts;
  if (increment !== undefined) return increment;
  const steps: Increments | undefined = context.venueOf(facts)?.increments;
  return steps === undefined ? (1 as Cents) : ((nextPrice(steps, price) - price) as Cents);
}
