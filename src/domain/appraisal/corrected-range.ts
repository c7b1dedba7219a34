import type { Corrections } from '../correction/corrections.ts';
import { type Cents, roundedCents } from '../money/cents.ts';
import { PPM } from '../money/rate.ts';
import type { RetailFromComps } from '../retail/retail-from-comps.ts';

/** A range of retail moved to the level and stretched to the spread that the dealer's own results showed. */
export function correctedRange<Range extends Pick<RetailFromComps, 'middle' | 'low' | 'high' | 'sigma' | 'scale'>>(
  range: Range,
  corrections: Corrections | undefined,
): Range {
  const level = (corrections?.retailLevel?.factorPpm ?? PPM) / PPM;
  const spread = (corrections?.retailSpread?.factorPpm ?? PPM) / PPM;
  if (level === 1 && spread === 1) return range;
  const { middle } = range;
  const end = (at: Cents): Cents => roundedCents(Math.max(1, middle * level * (Math.max(1, at) / middle) ** spread));
  return {
    ...range,
    middle: roundedCents(middle * level),
    low: end(range.low),
    high: end(range.high),
    sigma: range.sigma * spread,
    scale: range.scale * spread,
  };
}
