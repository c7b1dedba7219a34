import type { Cents } from '../../money/cents.ts';
import type { PastLot } from '../happened.ts';

/**
 * Why a lot was lost, where the price that it took is known:
 * - `execution`: that price was within our max bid and within what was planned, and still it went to another;
 * - `rationing`: it was within the max bid but above what the plan left for it;
 * - `rule`: it was above the max bid, and the car would still have been expected to earn something;
 * - `rightly`: at that price it was expected to earn nothing.
 */
export type LostBecause = 'execution' | 'rationing' | 'rule' | 'rightly';

/** A lost lot, held against the price that it took. */
export interface LostLot {
  readonly because: LostBecause;
  /** One step above what it went for: the winner's own limit is hidden, so it may have taken more. */
  readonly needed: Cents;
  /** What the car was expected to earn at that price, at most; below zero where it would have lost. */
  readonly profit: Cents;
  /** Of an execution miss: no bid was in, it was below that price, or it was high enough and did not count. */
  readonly bid?: 'none' | 'too-low' | 'not-counted';
  /** There was a purse, and nobody knows what the plan said of this lot: it may have held the bid back. */
  readonly mayBePlanned?: boolean;
}

/**
 * What a lost lot cost. Slack on a win has no counterpart here: at an open sale the price is settled by the others' bids, so
 * nothing was overpaid or saved by having been ready to pay more.
 * @returns null for a lot that was not lost, or of which the price or an estimate is not known
 */
export function lostLot({
  forecast,
  happened,
  purse,
}: Pick<PastLot, 'forecast' | 'happened' | 'purse'>): LostLot | null {
  const { deal, maxBid, plan, late } = forecast;
  if (happened.ended !== 'lost' || deal === null || maxBid === undefined || late) return null;
  const { price: needed, profit } = deal;
  if (maxBid === null || needed > maxBid) return { because: profit > 0 ? 'rule' : 'rightly', needed, profit };
  if (plan !== undefined && (plan.bid === null || plan.bid < needed)) return { because: 'rationing', needed, profit };
  const { bid } = happened;
  const how = bid === null ? 'none' : bid < needed ? 'too-low' : 'not-counted';
  const mayBePlanned = purse !== undefined && plan === undefined && how !== 'not-counted';
  return { because: 'execution', needed, profit, bid: how, ...(mayBePlanned && { mayBePlanned }) };
}
