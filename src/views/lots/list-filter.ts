import type { Instant } from '../../domain/time/instant.ts';
import { DAY } from '../../domain/time/units.ts';
import { hasBid, isOver } from '../../folds/bid-given.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { LotWorks } from './standing.ts';

/**
 * What a list can be cut down to: `unplaced` wants a proxy, `no-room` wants none because of its price, `placed` has one that
 * stands or waits.
 */
export const SHOW_KEYS = [
  'open',
  'day',
  'unplaced',
  'outbid',
  'over-max',
  'no-venue',
  'no-retail',
  'unfinished',
  'placed',
  'no-room',
  'closed',
  'all',
] as const;
export type ShowKey = (typeof SHOW_KEYS)[number];

/** Those for which the max bid of every lot has to be known. */
export const BY_FIGURE: ReadonlySet<ShowKey> = new Set(['unplaced', 'no-venue', 'no-retail', 'unfinished', 'no-room']);

/** @param isKnown whether the max bid is known already; one that is not is left out of what hangs on it */
export function shows(
  lot: LotState,
  show: ShowKey,
  { of, bids }: LotWorks,
  now: Instant,
  isKnown: (lot: LotState) => boolean = () => true,
): boolean {
  if (show === 'all') return true;
  const open = !isOver(lot, now);
  if (show === 'closed') return !open;
  const close = lot.facts.close?.instant;
  if (!open) return false;
  switch (show) {
    case 'open':
      return true;
    case 'day':
      return close !== undefined && close <= now + DAY;
    case 'outbid':
    case 'over-max':
      return hasBid(lot) && bids.at(lot, now).is === show;
    case 'placed':
      return hasBid(lot) && !['outbid', 'over-max'].includes(bids.at(lot, now).is);
    default:
      return isKnown(lot) && byFigure(lot, show, { of, bids }, now);
  }
}

function byFigure(lot: LotState, show: ShowKey, { of, bids }: LotWorks, now: Instant): boolean {
  const { missing, needs = [] } = of(lot);
  switch (show) {
    case 'no-venue':
    case 'no-retail':
      return needs.includes(show);
    case 'unfinished':
      return lot.facts.close === undefined || missing.length > 0;
    default:
      return missing.length === 0 && !hasBid(lot) && bids.at(lot, now).loud === (show === 'unplaced');
  }
}
