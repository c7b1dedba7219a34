import type { Cents } from '../money/cents.ts';
import { tCdf } from '../statistics/student-t.ts';
import type { AppraisedRetail } from './appraised-retail.ts';

/** One point of the picture of a retail range. */
export interface RetailPoint {
  readonly price: Cents;
  /** How likely a price around here is, as a share of the likeliest: 0 to 1. */
  readonly height: number;
}

/**
 * How retail is spread before any ceiling cuts it off, drawn from the very distribution that the range is taken from:
 * Student's t of the log price. The chance of a loss takes a lognormal of the same range.
 * @param from above 0
 * @param to above `from`
 */
export function retailCurve(retail: AppraisedRetail, from: Cents, to: Cents, count = 96): readonly RetailPoint[] {
  const below = chanceOf(retail);
  const step = (to - from) / count;
  const points = Array.from({ length: count + 1 }, (_, i) => {
    const price = from + i * step;
    return { price, height: below(price + step / 2) - below(Math.max(1, price - step / 2)) };
  });
  const highest = Math.max(...points.map(({ height }) => height), Number.MIN_VALUE);
  return points.map(({ price, height }) => ({ price: Math.round(price) as Cents, height: height / highest }));
}

function chanceOf({ uncapped, scale, freedom }: AppraisedRetail): (price: number) => number {
  return (price) => tCdf(Math.log(price / uncapped) / scale, freedom);
}
