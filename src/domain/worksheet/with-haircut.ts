import { CORRECTION_LABELS, type Corrections } from '../correction/corrections.ts';
import type { Deal } from '../deal/deal.ts';
import { maxBidOnly } from '../deal/max-bid.ts';
import { roundedCents, ZERO } from '../money/cents.ts';
import { factor, PPM, ppm } from '../money/rate.ts';

/**
 * The deal with what won cars usually disappoint by taken off: a share of the hammer price at which it would just break
 * even, for that is what was compared with the price paid when the share was learned.
 */
export function withHaircut(deal: Deal, win: Corrections['win']): Deal {
  if (win === undefined || win.haircutPpm === 0) return deal;
  const noProfit = { dollars: ZERO, shareOfRetail: ppm(0), perCash: factor(0) };
  const even = maxBidOnly({ ...deal, rule: noProfit });
  if (even === null) return deal;
  const off = roundedCents((even * win.haircutPpm) / PPM);
  return { ...deal, costs: [...deal.costs, { kind: 'haircut-cost', label: CORRECTION_LABELS.win, cents: off }] };
}
