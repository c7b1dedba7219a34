import type { Cents } from '../money/cents.ts';
import type { Increments } from './increments.ts';

/** The prices a sale can land on, from 0 up to a limit, numbered from 0 in order. Nothing is stored a price. */
export interface PriceGrid {
  /** How many prices there are; at least 1, because 0 is always one. */
  readonly size: number;
  /** @param index 0 to size − 1 */
  readonly priceAt: (index: number) => Cents;
  /** Number of the first price at or above `price`; `size` when there is none. */
  readonly indexFrom: (price: number) => number;
}

interface Stretch {
  readonly from: number;
  readonly step: number;
  readonly firstIndex: number;
}

/**
 * The grid of a sale. Steps are counted from each band's own start, so a band that starts at $5,000 with steps of $75
 * has $5,000, $5,075 and so on, wherever the band below it ended.
 * @param top the highest price that is of interest, included; 0 or more
 */
export function priceGrid(increments: Increments, top: number): PriceGrid {
  const stretches: Stretch[] = [];
  let size = 0;
  for (let i = 0; i < increments.length; i++) {
    const band = increments[i];
    if (band === undefined || band.fromCents > top) break;
    const last = Math.min(top, (increments[i + 1]?.fromCents ?? Number.POSITIVE_INFINITY) - 1);
    stretches.push({ from: band.fromCents, step: band.stepCents, firstIndex: size });
    size += Math.floor((last - band.fromCents) / band.stepCents) + 1;
  }
  return {
    size,
    priceAt(index) {
      let at = stretches.length - 1;
      while (at > 0 && (stretches[at] as Stretch).firstIndex > index) at--;
      const { from, step, firstIndex } = stretches[at] as Stretch;
      return (from + (index - firstIndex) * step) as Cents;
    },
    indexFrom(price) {
      if (price <= 0) return 0;
      let at = stretches.length - 1;
      while (at > 0 && (stretches[at] as Stretch).from > price) at--;
      const { from, step, firstIndex } = stretches[at] as Stretch;
      // Past a stretch's last price the next stretch begins, and past the last stretch the grid ends.
      const end = stretches[at + 1]?.firstIndex ?? size;
      return Math.min(firstIndex + Math.ceil((price - from) / step), end);
    },
  };
}

/** The first price a sale can land on above `price`: what the next bid would be. */
export function nextPrice(increments: Increments, price: Cents): Cents {
  let next = Number.POSITIVE_INFINITY;
  for (const band of increments) {
    if (band.fromCents > price) {
      next = Math.min(next, band.fromCents);
      break;
    }
    next = band.fromCents + (Math.floor((price - band.fromCents) / band.stepCents) + 1) * band.stepCents;
  }
  return next as Cents;
}
