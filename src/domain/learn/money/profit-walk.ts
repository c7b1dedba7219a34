import { holdFactorsFor, unitFee } from '../../carrying/hold-factors.ts';
import { type Cents, cents } from '../../money/cents.ts';
import { FACTOR_UNIT } from '../../money/rate.ts';
import { mulDivRound } from '../../money/rounding.ts';
import type { Forecast, PriceForecast } from '../forecast.ts';
import type { Bought, PastLot } from '../happened.ts';

/** What can make a car's profit another than was expected, in the order in which it is told. */
export const WALK_PARTS = ['retail', 'recon', 'fees', 'transport', 'days', 'other', 'canceled'] as const;
export type WalkPart = (typeof WALK_PARTS)[number];

/** From the profit that was expected at the price paid to what became of it: `expected` plus every part is `actual`. */
export interface ProfitWalk {
  readonly expected: Cents;
  /** What each part added; below zero where it cost. */
  readonly parts: Readonly<Record<WalkPart, Cents>>;
  readonly actual: Cents;
  /** Parts of which no bill came, so that what was expected stands for it. */
  readonly unbilled: readonly ('fees' | 'transport' | 'recon')[];
}

/**
 * Where the money of one car went. Pack, overhead and the cost of selling stand on both sides as the setup had them, since no
 * bill comes for them. What the doubts about the listing were to cost is counted with retail: a false statement shows in what
 * the car brings. The allowance for a canceled sale comes back when the sale stands; of one that was canceled everything is
 * one part, what was lost less what was expected.
 * @returns null for a car that was not won, stands unsold, or had no estimate
 */
export function profitWalk({ forecast, happened }: Pick<PastLot, 'forecast' | 'happened'>): ProfitWalk | null {
  const { deal } = forecast;
  const { bought, canceled } = happened;
  if (deal === null || bought === null) return null;
  if (canceled) return bought.lost === null ? null : canceledWalk(deal, bought.lost);
  if (bought.sale === null) return null;
  const parts = {
    retail: cents(bought.sale.cents - (deal.retail - deal.doubts)),
    recon: under(deal.recon, bought.recon),
    fees: under(deal.fees, bought.fees),
    transport: under(deal.transport, bought.transport),
    days: under(deal.hold, heldFor(forecast, deal, bought)),
    // The bill may ask for another price than the result says.
    other: cents(-bought.other - (bought.hammer === null ? 0 : bought.hammer - deal.price)),
    canceled: deal.undone,
  };
  return { expected: deal.profit, parts, actual: actualOf(deal.profit, parts), unbilled: unbilledOf(deal, bought) };
}

function canceledWalk({ profit }: PriceForecast, lost: Cents): ProfitWalk {
  const none = cents(0);
  const parts = {
    retail: none,
    recon: none,
    fees: none,
    transport: none,
    days: none,
    other: none,
    canceled: cents(-lost - profit),
  };
  return { expected: profit, parts, actual: cents(-lost), unbilled: [] };
}

/** What was saved on a cost; nothing as long as it is not billed. */
const under = (expected: Cents, actual: Cents | null): Cents => (actual === null ? cents(0) : cents(expected - actual));

const actualOf = (expected: Cents, parts: ProfitWalk['parts']): Cents =>
  cents(WALK_PARTS.reduce((sum, part) => sum + parts[part], expected as number));

function unbilledOf(deal: PriceForecast, bought: Bought): ProfitWalk['unbilled'] {
  return (['fees', 'transport', 'recon'] as const).filter((part) => bought[part] === null && deal[part] !== 0);
}

/**
 * What holding the car cost for the days that it really stood, by the terms of the forecast; the lender's interest and fee as
 * billed, where they are.
 */
function heldFor({ context: { setup } }: Pick<Forecast, 'context'>, deal: PriceForecast, bought: Bought): Cents {
  const { carrying } = setup;
  const { floorFactor, cashFactor, flatHold } = holdFactorsFor(carrying, () => 1, bought.days, deal.funding);
  const lender = mulDivRound(deal.financed, floorFactor, FACTOR_UNIT, 'half-up') + unitFee(carrying, deal.funding);
  const own = mulDivRound(deal.cash, cashFactor, FACTOR_UNIT, 'half-up') + flatHold - unitFee(carrying, deal.funding);
  return cents(own + (bought.interest ?? lender));
}

/** The walk of the average car: each part is the difference of the rounded levels, so that they still close to the cent. */
export function averageWalk(walks: readonly ProfitWalk[]): (ProfitWalk & { readonly cars: number }) | null {
  if (walks.length === 0) return null;
  const mean = (sum: number) => Math.round(sum / walks.length);
  const total = (of: (walk: ProfitWalk) => number) => walks.reduce((sum, walk) => sum + of(walk), 0);
  let level = total(({ expected }) => expected);
  const expected = mean(level);
  const parts = {} as Record<WalkPart, Cents>;
  for (const part of WALK_PARTS) {
    const before = mean(level);
    level += total((walk) => walk.parts[part]);
    parts[part] = cents(mean(level) - before);
  }
  const unbilled = [...new Set(walks.flatMap((walk) => walk.unbilled))].sort();
  return { cars: walks.length, expected: cents(expected), parts, actual: cents(mean(level)), unbilled };
}
