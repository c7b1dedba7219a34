import { type PricingContext, pricingContext } from '../domain/bid/pricing-context.ts';
import { standingOf, type Standing as Worked } from '../domain/bid/worksheet-of.ts';
import type { Setup } from '../domain/setup/setup.ts';
import type { LotState } from '../journal/lot-state.ts';

/** What a list shows of a lot's worksheet: the two figures, and in words whatever is missing for them. */
export interface Standing extends Worked {
  /** Empty when the worksheet could be worked out. */
  readonly missing: readonly string[];
}

/** Works out standings under one setup, each lot once: tens of thousands of lots are sorted and scrolled by them. */
export function standingWith(setup: Setup): (lot: LotState) => Standing {
  const context: PricingContext = pricingContext(setup);
  const known = new WeakMap<LotState, Standing>();
  return (lot) => {
    let standing = known.get(lot);
    if (standing === undefined) {
      standing = workOut(lot, context);
      known.set(lot, standing);
    }
    return standing;
  };
}

function workOut(lot: LotState, context: PricingContext): Standing {
  const worked = standingOf(lot.facts, context);
  if (worked.ok) return { ...worked.value, missing: [] };
  return { maxBid: null, headroom: null, missing: worked.problems.map(({ message }) => message) };
}
