import { lotName } from '../../domain/lot/car-name.ts';
import type { LotFacts } from '../../domain/lot/lot.ts';
import type { MarketGroup } from '../../domain/market/market-group.ts';
import { cents } from '../../domain/money/cents.ts';
import type { PlanLot } from '../../domain/plan/plan-lot.ts';
import { type PricedLot, pricedLot } from '../../domain/plan/priced-lot.ts';
import { lastReading } from '../../domain/time/close-time.ts';
import type { Instant } from '../../domain/time/instant.ts';
import type { PricingContext } from '../../domain/worksheet/pricing-context.ts';
import { isOver } from '../../folds/bid-given.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { Bids } from '../lots/bids.ts';

/** Lots that somebody may still bid on. One whose close nobody knows is among them. */
export const stillOpen = (lots: readonly LotState[], now: Instant): readonly LotState[] =>
  lots.filter((lot) => !lot.dropped && !isOver(lot, now));

export interface PlanLotFrom {
  readonly context: PricingContext;
  readonly bids: Bids;
  readonly groupOf: (facts: LotFacts) => MarketGroup;
  /** When each lot closed by the plan before. */
  readonly closeBefore: (lot: LotState) => Instant | null | undefined;
}

/** A lot as the plan sees it. One that can't be priced has no max bid, and says nothing else. */
export function planLot(lot: LotState, { context, bids, groupOf, closeBefore }: PlanLotFrom): PlanLot {
  const { facts, planChoice } = lot;
  const priced = pricedLot(facts, context);
  const state = bids.open(lot);
  const close = facts.close === undefined ? null : lastReading(facts.close);
  const before = closeBefore(lot);
  const sealed = facts.sealed !== undefined;
  const price = sealed ? undefined : state.price?.cents;
  return {
    id: lot.id,
    name: lotName(facts),
    close,
    ...(before !== undefined && before !== null && before !== close && { closeBefore: before }),
    ...(priced.ok ? priced.value : NOT_PRICED),
    group: groupOf(facts),
    ...(price !== undefined && price > 0 && { priceNow: price }),
    ...(price !== undefined && price > 0 && state.is !== 'none' && state.is !== 'outbid' && { leading: true }),
    // A bid that a price has passed can't win, so it binds nothing.
    ...(state.is !== 'none' && state.is !== 'outbid' && { proxy: state.bid.cents }),
    ...(sealed && { sealed }),
    ...(planChoice && { choice: planChoice }),
    ...(facts.titleId === undefined && { untitled: true }),
  };
}

const NOT_PRICED: PricedLot = {
  maxBid: null,
  increments: [{ fromCents: cents(0), stepCents: cents(100) }],
  zeroProfit: cents(1),
  waysAt: () => [{ pool: 'cash', cash: 0, line: 0, profit: 0 }],
};
