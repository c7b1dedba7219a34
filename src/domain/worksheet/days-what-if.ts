import type { StockCar } from '../carrying/days-to-sell.ts';
import type { LotFacts } from '../lot/lot.ts';
import type { Cents } from '../money/cents.ts';
import type { Setup } from '../setup/setup.ts';
import { type PricingContext, pricingContext } from './pricing-context.ts';
import { standingOf } from './worksheet-of.ts';

export interface DaysWhatIf {
  /** The price to stop at if cars sold in half the days. */
  readonly half: Cents | null;
  /** And if they took twice as long. */
  readonly double: Cents | null;
}

/**
 * What the days to sell do to the price to stop at: everything that depends on them is worked out anew, the spread
 * behind the chance of a loss too. None where the lot has no price to stop at.
 */
export function daysWhatIf(facts: LotFacts, { setup, history }: PricingContext): DaysWhatIf | undefined {
  const at = (times: number): Cents | null | undefined => {
    const standing = standingOf(facts, scaledDays(setup, history, times));
    return standing.ok ? standing.value.maxBid : undefined;
  };
  const [half, double] = [at(0.5), at(2)];
  return half === undefined || double === undefined ? undefined : { half, double };
}

function scaledDays(setup: Setup, history: readonly StockCar[], times: number): PricingContext {
  const { carrying } = setup;
  const scale = (days: number) => Math.min(3650, Math.max(1, Math.round(days * times)));
  const daysToSell = { ...carrying.daysToSell, days: scale(carrying.daysToSell.days) };
  // What his own cars showed is scaled as well, or it would pull the median back.
  const scaled = history.map((car) => ({ ...car, enteredAt: car.enteredAt * times, days: car.days * times }));
  return pricingContext({ ...setup, carrying: { ...carrying, daysToSell } }, { history: scaled });
}
