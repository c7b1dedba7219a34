import { type Cents, cents } from '../money/cents.ts';
import { PPM } from '../money/rate.ts';
import type { FeeTable } from './fee-schedule.ts';
import { totalFees } from './fees-at.ts';

/** What all tables together charge at a price, for a picture. */
export interface FeePoint {
  readonly price: Cents;
  readonly fee: Cents;
}

/**
 * The line of fees against prices from 0 to `highest`, as its corners: at every edge the last price below it and the
 * first at it, so that a jump is drawn upright, and every price at which a minimum or a maximum takes hold.
 */
export function feePoints(tables: readonly FeeTable[], highest: Cents): readonly FeePoint[] {
  const prices = new Set<number>([0, highest]);
  for (const { bands } of tables) {
    for (const [i, band] of bands.entries()) {
      const end = bands[i + 1]?.fromCents ?? highest;
      if (band.fromCents > 0) prices.add(band.fromCents - 1).add(band.fromCents);
      for (const limit of [band.minimumCents, band.maximumCents]) {
        if (limit === undefined || band.ratePpm === 0) continue;
        const corner = Math.round(((limit - band.flatCents) * PPM) / band.ratePpm);
        if (corner > band.fromCents && corner < end) prices.add(corner);
      }
    }
  }
  return [...prices]
    .filter((price) => price <= highest)
    .sort((a, b) => a - b)
    .map((price) => ({ price: cents(price), fee: cents(totalFees(price, tables)) }));
}
