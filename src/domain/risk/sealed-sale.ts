import * as z from 'zod/mini';
import type { Cents } from '../money/cents.ts';
import { type Estimate, estimateSchema } from '../money/estimate.ts';
import { typedSpread } from '../retail/guess.ts';
import { chanceBelow } from '../statistics/lognormal.ts';

/** A sale in which everybody bids once, unseen, and the winner pays what he bid. */
export const sealedSaleSchema = z.strictObject({
  /** What the best of the other bids is likely to be; low and high one in ten below and above. */
  rival: z.optional(estimateSchema),
});

/** How far off a figure for the best other bid may be when no range comes with it: an assumption of this tool. */
const BARE_SPREAD = 0.15;

/** The chance that a bid beats the best of the others. */
export function beatsRival(rival: Estimate): (bid: Cents) => number {
  const amount = { mean: rival.likely, sigma: typedSpread(rival) ?? BARE_SPREAD };
  return (bid) => chanceBelow(amount, bid);
}
