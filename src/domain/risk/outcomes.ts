import type { HoldCase } from '../carrying/hold-spread.ts';
import type { HoldSpread } from '../carrying/hold-spreads.ts';
import { type DealTotals, sumsAt } from '../deal/price-sums.ts';
import { roundedCents } from '../money/cents.ts';
import { PPM } from '../money/rate.ts';
import type { CostSpread } from './cost-spread.ts';
import { meanRetail, type Outcomes, type RetailSpread, type Sold } from './profit-spread.ts';

/** Every way the deal can turn out at a price but for retail: what costs overrun, when it sells, whether it is undone. */
export function outcomesOf(
  totals: DealTotals,
  retail: RetailSpread,
  costs: CostSpread,
  { few, byDay }: HoldSpread,
): (price: number) => Outcomes {
  const { deal } = totals;
  // The deal's figure is in whole cents, so that is what its spread is laid around.
  const mean = roundedCents(meanRetail(retail));
  // A what-if moves the deal's retail; its spread moves along, in proportion.
  const gain = mean === 0 ? 0 : (deal.titleKeeps / PPM) * (deal.retail / mean);
  const undone = deal.unwind.chance / PPM;
  return (price) => {
    const sums = sumsAt(totals, price);
    const certain = totals.costs + sums.allIn - totals.transport;
    const soldIn = (one: HoldCase): Sold => ({
      weight: (1 - undone) * one.chance,
      gain,
      base: certain + sums.financed * one.floor + sums.cash * one.cash + one.flat,
      times: 1 + one.cash,
    });
    return {
      sold: few.map(soldIn),
      byDay: retail.cap === undefined ? undefined : byDay.map(soldIn),
      costs,
      undone: { weight: undone, cost: deal.unwind.fixed + price * (deal.unwind.rate / PPM) },
    };
  };
}
