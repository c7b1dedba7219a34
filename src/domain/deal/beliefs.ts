import type { HoldFactors } from '../carrying/hold-factors.ts';
import type { Cents } from '../money/cents.ts';
import type { CostLine, Funding } from './deal.ts';

/**
 * What is believed about one lot beyond its stated facts: retail from comparables, doubts about the listing, a
 * correction learned from earlier cars, a car that will stand longer than usual. Each part is optional and, where
 * given, takes the place of what the facts and the setup say, or adds to it.
 */
export interface Appraisal {
  /** Takes the place of the lot's own retail figure. */
  readonly retail?: { readonly mean: Cents; readonly low?: Cents; readonly high?: Cents };
  /** Added to the costs: lines of kind `doubt` and `haircut-cost`. */
  readonly costs?: readonly CostLine[];
  /** Takes the place of the setup's hold factors. */
  readonly hold?: (funding: Funding['kind']) => HoldFactors;
}
