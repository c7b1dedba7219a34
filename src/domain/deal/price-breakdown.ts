import { feesAt } from '../fees/fees-at.ts';
import type { Cents } from '../money/cents.ts';
import type { CostLine, Deal } from './deal.ts';
import { type DealTotals, dealTotals, type PriceSums, type ProfitRuleKey, sumsAt } from './price-sums.ts';

/** What a line of the worksheet is about; what-ifs and pictures go by it. */
export type LineGroup =
  | 'retail'
  | 'title'
  | CostLine['kind']
  | 'fee'
  | 'charge'
  | 'interest'
  | 'own-cash'
  | 'holding'
  | 'undone'
  | 'required-profit'
  | 'slack'
  | 'ceiling'
  | 'risk-cap'
  | 'sealed';

export interface Line {
  /** Unique within a breakdown and the same at every price. */
  readonly key: string;
  readonly group: LineGroup;
  /** Plain words a buyer understands. */
  readonly label: string;
  /** What the line takes away; negative where it gives something back. For retail, the amount itself. */
  readonly cents: Cents;
  /** One in ten below, one in ten above. */
  readonly range?: { readonly low: Cents; readonly high: Cents };
}

/** A deal at one price, line by line: `retail.cents` less all `steps` is exactly `price`. */
export interface PriceBreakdown {
  readonly price: Cents;
  readonly retail: Line;
  /** In the order in which they are taken off; lines of nothing are left out. The last two are required profit and slack. */
  readonly steps: readonly Line[];
  /** Hammer, fees, charges and transport. */
  readonly allIn: Cents;
  readonly fees: Cents;
  /** What the lender advances; 0 when it is paid from own cash. */
  readonly financed: Cents;
  /** Own cash it ties up, recon included. */
  readonly cash: Cents;
  /** Expected profit, the chance of an undone sale allowed for. */
  readonly profit: Cents;
  /** The least profit, and which of the three rules asks for it. */
  readonly required: Cents;
  readonly requiredBy: ProfitRuleKey;
  /** `profit − required`; the price is acceptable to the profit rule when it is 0 or more. */
  readonly slack: Cents;
}

/**
 * Everything that stands between retail and a hammer price.
 * @param price any whole cents, on the sale's grid or not
 */
export function breakdownAt(deal: Deal, price: Cents): PriceBreakdown {
  return breakdownOf(dealTotals(deal), price);
}

/** The same when the totals of the deal are at hand. */
export function breakdownOf(totals: DealTotals, price: Cents): PriceBreakdown {
  const sums = sumsAt(totals, price);
  return {
    price,
    retail: line('retail', 'retail', 'Expected retail', totals.deal.retail, totals.deal.retailRange),
    steps: stepsOf(totals, sums),
    allIn: whole(sums.allIn),
    fees: whole(sums.fees),
    financed: whole(sums.financed),
    cash: whole(sums.cash),
    profit: whole(sums.profit),
    required: whole(sums.required),
    requiredBy: sums.requiredBy,
    slack: whole(sums.slack),
  };
}

function stepsOf({ deal, titled }: DealTotals, sums: PriceSums): Line[] {
  const { titleName, funding } = deal;
  const steps: Line[] = [
    line(
      'title',
      'title',
      titleName === undefined ? 'Title discount' : `Title discount: ${titleName}`,
      deal.retail - titled,
    ),
    ...deal.costs.map((cost, i) => line(`${cost.kind}-${i}`, cost.kind, cost.label, cost.cents, cost.range)),
    ...feesAt(sums.price as Cents, deal.fees).map((fee, i) => line(`fee-${i}`, 'fee', fee.label, fee.cents)),
    ...deal.charges.map((charge, i) => line(`charge-${i}`, 'charge', charge.label, charge.cents)),
    line('interest', 'interest', 'Floor-plan interest', sums.interest),
    line('own-cash', 'own-cash', 'Cost of own cash', sums.cashCost),
    line('holding', 'holding', HOLDING_LABEL[funding.kind], funding.flatHold),
    line('undone', 'undone', 'Allowance for a canceled sale', sums.undone),
  ].filter(({ cents }) => cents !== 0);
  steps.push(line('required-profit', 'required-profit', REQUIRED_LABEL[sums.requiredBy], sums.required));
  steps.push(line('slack', 'slack', sums.slack < 0 ? 'Short of that profit' : 'Left by rounding down', sums.slack));
  return steps;
}

const HOLDING_LABEL = {
  floor: 'Lot space, and the lender’s fee for the car',
  cash: 'Lot space',
} as const;

const REQUIRED_LABEL: Record<ProfitRuleKey, string> = {
  'least-dollars': 'Profit you require: your minimum in dollars',
  'least-share': 'Profit you require: your % of retail',
  'least-return': 'Profit you require: your return on cash',
};

function line(key: string, group: LineGroup, label: string, amount: number, range?: Line['range']): Line {
  const cents = whole(amount);
  return range === undefined ? { key, group, label, cents } : { key, group, label, cents, range };
}

/** Brands a sum of whole cents. Unlike `cents` it lets absurd prices through: a page may ask about any price at all. */
function whole(amount: number): Cents {
  // Adding 0 turns -0 into 0.
  return (amount + 0) as Cents;
}
