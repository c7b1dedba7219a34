import type { LotFacts, LotId } from '../../lot/lot.ts';
import { type Cents, cents } from '../../money/cents.ts';
import type { PricingContext } from '../../worksheet/pricing-context.ts';
import { standingOf } from '../../worksheet/worksheet-of.ts';

/** A lot that can still be bid on. */
export interface OpenLot {
  readonly lot: LotId;
  readonly title: string;
  readonly facts: LotFacts;
}

/** A max bid before and after a switch; null where no price pays. */
export interface MovedBid extends Pick<OpenLot, 'lot' | 'title'> {
  readonly before: Cents | null;
  readonly after: Cents | null;
}

/** What a switch does to the max bids of the lots that are open. */
export interface Effect {
  /** Lots with a max bid on either side. */
  readonly lots: number;
  /** Those that move, the one that moves most first. */
  readonly moved: readonly MovedBid[];
  /** Average change of all of them; a bid that goes or comes counts whole. */
  readonly average: number;
}

/**
 * Works the effect out lot by lot: after each it stops, so that the caller decides how long the page may be held.
 * Yields how many lots are done.
 */
export function* effectOf(
  lots: readonly OpenLot[],
  before: PricingContext,
  after: PricingContext,
): Generator<number, Effect> {
  const moved: MovedBid[] = [];
  let count = 0;
  let total = 0;
  for (const [done, { lot, title, facts }] of lots.entries()) {
    yield done;
    const [was, is] = [standingOf(facts, before), standingOf(facts, after)];
    if (!was.ok || !is.ok) continue;
    const bids = { before: was.value.maxBid, after: is.value.maxBid };
    if (bids.before === null && bids.after === null) continue;
    count += 1;
    total += changeOf(bids);
    if (changeOf(bids) !== 0 || (bids.before === null) !== (bids.after === null)) moved.push({ lot, title, ...bids });
  }
  const most = (one: MovedBid) => Math.abs(changeOf(one));
  return {
    lots: count,
    moved: moved.sort((a, b) => most(b) - most(a) || (a.lot < b.lot ? -1 : 1)),
    average: count === 0 ? 0 : total / count,
  };
}

/** By how much a max bid moves; where there is none it counts as nothing. */
export const changeOf = ({ before, after }: Pick<MovedBid, 'before' | 'after'>): Cents =>
  cents((after ?? 0) - (before ?? 0));
