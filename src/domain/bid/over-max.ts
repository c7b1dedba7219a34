import type { Cents } from '../money/cents.ts';
import type { AcceptedRisk } from '../sale/accepted-risk.ts';
import type { StandingBid } from './own-bids.ts';

/**
 * Whether somebody decided to leave a bid above the max bid: when it was placed, by giving a reason, or later. That holds
 * for this amount, and only for as long as the max bid has not fallen further than it had then.
 * @param maxBid null when no price works
 */
export function riskAccepted(bid: StandingBid, maxBid: Cents | null, accepted: readonly AcceptedRisk[]): boolean {
  if (bid.why !== undefined && (bid.maxBidThen === undefined || !fellBelow(bid.maxBidThen, maxBid))) return true;
  return accepted.some((risk) => risk.cents === bid.cents && risk.at >= bid.at && !fellBelow(risk.maxBidCents, maxBid));
}

const fellBelow = (then: Cents | null, now: Cents | null): boolean => then !== null && (now === null || now < then);
