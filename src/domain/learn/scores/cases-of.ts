import { cents } from '../../money/cents.ts';
import type { PastLot } from '../happened.ts';
import type { ChanceCase } from './chance-score.ts';
import type { CostCase } from './cost-score.ts';
import type { DaysCase } from './days-score.ts';
import type { PriceCase } from './price-trend.ts';
import type { RetailCase } from './retail-score.ts';

/** Past lots as the cases of every score. */
export interface Cases {
  readonly retail: readonly RetailCase[];
  readonly chances: readonly ChanceCase[];
  readonly days: readonly DaysCase[];
  readonly recon: readonly CostCase[];
  readonly fees: readonly CostCase[];
  readonly prices: readonly PriceCase[];
}

/** What all recon of a car together is called beside its single lines. */
export const ALL_RECON = 'All recon of a car';

/** What can be scored. A lot that was written down only after its sale had no forecast, so it is in none of them. */
export function casesOf(past: readonly PastLot[]): Cases {
  const timely = past.filter(({ forecast }) => !forecast.late);
  return {
    retail: timely.flatMap(retailCase),
    chances: timely.flatMap(chanceCase),
    days: timely.flatMap(daysCase),
    recon: timely.flatMap(reconCases),
    fees: timely.flatMap(feeCase),
    prices: timely.flatMap(priceCase),
  };
}

/** Another dealer pays no retail, so a car that went at wholesale says nothing of it. */
function retailCase({ lot, forecast: { retail }, happened: { bought } }: PastLot): RetailCase[] {
  const sale = bought?.sale;
  if (retail === null || !sale || sale.buyer === 'wholesale' || sale.cents <= 0) return [];
  return [{ lot, date: sale.date, forecast: retail, actual: sale.cents }];
}

/** A lot that did not reach its reserve was not won by us either; one that was withdrawn was no sale. */
function chanceCase({ lot, forecast: { plan }, happened: { ended, date, bid } }: PastLot): ChanceCase[] {
  const decided = ended === 'won' || ended === 'lost' || ended === 'not-sold';
  if (plan?.chance === undefined || bid === null || !decided) return [];
  return [{ lot, date, chance: plan.chance, won: ended === 'won' }];
}

/** A car that was wholesaled had not sold by then, which is all that it says. */
function daysCase({ lot, forecast: { days }, happened: { bought, canceled, date } }: PastLot): DaysCase[] {
  if (bought === null || canceled) return [];
  const { survives, median } = days;
  const sold = bought.sale !== null && bought.sale.buyer !== 'wholesale';
  return [{ lot, date, days: bought.days, sold, survives, median }];
}

/** Each line with a bill against it; all recon of a car once it has sold, when no more bills are to come. */
function reconCases({ lot, forecast: { deal }, happened: { bought, date } }: PastLot): CostCase[] {
  if (bought === null || deal === null) return [];
  const settled = bought.sale?.date ?? date;
  const lines = bought.lines.flatMap(({ cost, expected, actualCents, label }): CostCase[] =>
    cost !== 'recon' || expected === null || actualCents === null
      ? []
      : [{ lot, date: settled, label: plainLabel(label), expected: expected.cents, actual: actualCents }],
  );
  if (bought.sale === null || bought.recon === null) return lines;
  return [{ lot, date: settled, label: ALL_RECON, expected: deal.recon, actual: bought.recon }, ...lines];
}

/** Without the chance that it is needed, which differs from car to car. */
const plainLabel = (label: string): string => label.replace(/ \(\d+(\.\d+)?% likely to be needed\)$/, '');

function feeCase({ lot, venue, forecast: { deal }, happened: { bought, date } }: PastLot): CostCase[] {
  if (deal === null || bought === null || bought.fees === null) return [];
  return [{ lot, date, label: venue, expected: deal.fees, actual: bought.fees }];
}

function priceCase({ lot, forecast: { retail }, happened: { hammer, date } }: PastLot): PriceCase[] {
  if (retail === null || hammer === null || hammer <= 0 || retail.mean <= 0) return [];
  return [{ lot, date, price: hammer, expected: cents(retail.mean) }];
}
