import { totalFees } from '../fees/fees-at.ts';
import { FACTOR_UNIT, PPM } from '../money/rate.ts';
import { mulDivRound } from '../money/rounding.ts';
import type { Deal } from './deal.ts';

/** The largest of the three least profits binds; on a tie the plainer one is named. */
export type ProfitRuleKey = 'least-dollars' | 'least-share' | 'least-return';

/** Every sum of a deal at one price, in whole cents. Plain numbers: this runs a dozen times for each max bid. */
export interface PriceSums {
  readonly price: number;
  readonly fees: number;
  /** Hammer, fees, charges and transport. */
  readonly allIn: number;
  /** What the lender advances. */
  readonly financed: number;
  /** Own cash that the car ties up: all-in and recon, less what the lender advances. */
  readonly cash: number;
  readonly interest: number;
  readonly cashCost: number;
  /** Profit if the sale stands. */
  readonly kept: number;
  /** What the chance of a canceled sale takes off it. */
  readonly undone: number;
  readonly profit: number;
  readonly required: number;
  readonly requiredBy: ProfitRuleKey;
  /** Profit beyond what is required; a price is acceptable when it is 0 or more. */
  readonly slack: number;
}

/** What of a deal does not depend on the price, worked out once. */
export interface DealTotals {
  readonly deal: Deal;
  /** Retail that the title leaves. */
  readonly titled: number;
  readonly charges: number;
  readonly transport: number;
  readonly recon: number;
  /** Every cost line, transport and recon included. */
  readonly costs: number;
  readonly shareRequired: number;
}

export function dealTotals(deal: Deal): DealTotals {
  let charges = 0;
  for (const charge of deal.charges) charges += charge.cents;
  let transport = 0;
  let recon = 0;
  let costs = 0;
  for (const line of deal.costs) {
    costs += line.cents;
    if (line.kind === 'transport') transport += line.cents;
    else if (line.kind === 'recon') recon += line.cents;
  }
  const titled = mulDivRound(deal.retail, deal.titleKeeps, PPM, 'half-up');
  const shareRequired = mulDivRound(titled, deal.rule.shareOfRetail, PPM, 'half-up');
  return { deal, titled, charges, transport, recon, costs, shareRequired };
}

/**
 * The deal at one hammer price. Every rounding is half up to the cent and stands on its own line, but for the advance,
 * which a lender rounds down.
 *
 *     profit = kept − undone,   undone = chance × (kept + what does not come back)
 *     kept   = titled retail − costs − hammer − fees − charges − interest − price of own cash − flat hold
 *
 * Where no fee falls, `slack` never rises with the price, to the very cent: fees, the bill, the advance (a share of at
 * most 1, capped) and the cash (the bill less the advance) are each a chain of non-decreasing steps, and a rounded
 * non-decreasing amount does not decrease; so interest and the price of cash do not fall, `kept` falls at least as
 * fast as the hammer rises, `kept − round(chance × (kept + lost))` does not rise because the rounded share moves by at
 * most the cent that `kept` does, and none of the three least profits falls.
 */
export function sumsAt(totals: DealTotals, price: number): PriceSums {
  const { deal } = totals;
  const { funding, rule, unwind } = deal;
  const fees = totalFees(price, deal.fees);
  const bill = price + fees + totals.charges;
  const financed = advanceOn(deal, funding.advanceOnFees ? bill : price);
  const allIn = bill + totals.transport;
  const cash = allIn - financed + totals.recon;
  const interest = mulDivRound(financed, funding.floorFactor, FACTOR_UNIT, 'half-up');
  const cashCost = mulDivRound(cash, funding.cashFactor, FACTOR_UNIT, 'half-up');
  const kept = totals.titled - totals.costs - bill - interest - cashCost - funding.flatHold;
  const lost = unwind.fixed + mulDivRound(price, unwind.rate, PPM, 'half-up');
  const undone = mulDivRound(kept + lost, unwind.chance, PPM, 'half-up');
  const profit = kept - undone;
  const returnRequired = mulDivRound(cash, rule.perCash, FACTOR_UNIT, 'half-up');
  const required = Math.max(rule.dollars, totals.shareRequired, returnRequired);
  const requiredBy =
    required === rule.dollars ? 'least-dollars' : required === totals.shareRequired ? 'least-share' : 'least-return';
  return {
    price,
    fees,
    allIn,
    financed,
    cash,
    interest,
    cashCost,
    kept,
    undone,
    profit,
    required,
    requiredBy,
    slack: profit - required,
  };
}

function advanceOn({ funding }: Deal, base: number): number {
  if (funding.kind === 'cash') return 0;
  const share = mulDivRound(base, funding.advance, PPM, 'down');
  return funding.advanceCap === undefined ? share : Math.min(share, funding.advanceCap);
}
