import type { HoldSpread } from '../carrying/hold-spreads.ts';
import type { Deal, Funding } from '../deal/deal.ts';
import { dealTotals } from '../deal/price-sums.ts';
import { type Cents, roundedCents } from '../money/cents.ts';
import { PPM, type Ppm } from '../money/rate.ts';
import type { Accepts } from '../price/accepted-intervals.ts';
import type { UncertainCost } from './cost-grid.ts';
import { type CostSpread, costSpread } from './cost-spread.ts';
import { losesAtMost } from './loss-chance.ts';
import { outcomesOf } from './outcomes.ts';
import { chanceOfProfitBelow, expectedProfit, type RetailSpread, worstCases } from './profit-spread.ts';

/** What is uncertain about a lot, in cents, beside the deal that counts all of it at its mean. */
export interface RiskInputs {
  /** Retail with a clean title, before a ceiling cuts it off at `cap`. */
  readonly retail: RetailSpread;
  /** Recon and doubts; each is in the deal's costs with its mean, to the cent. */
  readonly costs: readonly UncertainCost[];
  readonly hold: (funding: Funding['kind']) => HoldSpread;
}

/** What buying at one price may lead to. */
export interface Risk {
  /** Chance of losing money at all, 0 to 1. */
  readonly lossChance: number;
  /** Expected profit; the worksheet's, but for a few cents of rounding. */
  readonly expectedProfit: Cents;
  /** Nine times in ten profit is above this. */
  readonly oneInTen: Cents;
  /** What the worst one in ten come to on average. */
  readonly worstTenth: Cents;
}

/** Risk of buying at `price`. Deterministic: the same deal always gives the same figures. */
export function riskAt(deal: Deal, price: Cents, inputs: RiskInputs): Risk {
  const { retail } = inputs;
  const cases = outcomesAt(deal, inputs)(price);
  const worst = worstCases(0.1, cases, retail, 0.01);
  return {
    lossChance: Math.min(1, chanceOfProfitBelow(0, cases, retail)),
    expectedProfit: roundedCents(expectedProfit(cases, retail)),
    oneInTen: roundedCents(worst.begin),
    worstTenth: roundedCents(worst.average),
  };
}

/** The chance of losing money, price by price: for a picture. */
export function lossChances(deal: Deal, inputs: RiskInputs): (price: Cents) => number {
  const at = outcomesAt(deal, inputs);
  return (price) => Math.min(1, chanceOfProfitBelow(0, at(price), inputs.retail));
}

/**
 * The rule "the chance of losing money is at most `highest`", for `maxBid`. Between fee drops every case's cost rises
 * with the price, so the chance does too and what is accepted is a prefix.
 * @returns undefined when any chance will do, which saves the work of working it out
 */
export function lossChanceCap(deal: Deal, inputs: RiskInputs, highest: Ppm): Accepts | undefined {
  if (highest >= PPM) return undefined;
  // A billionth of slack: the order of additions must not decide a bid.
  return losesAtMost(outcomesAt(deal, inputs), inputs.retail, spreadOf(inputs), highest / PPM + 1e-9);
}

function outcomesAt(deal: Deal, inputs: RiskInputs) {
  return outcomesOf(dealTotals(deal), inputs.retail, spreadOf(inputs), inputs.hold(deal.funding.kind));
}

/** Made once for a lot, whatever else is asked about it. */
const spreads = new WeakMap<RiskInputs, CostSpread>();

function spreadOf(inputs: RiskInputs): CostSpread {
  const spread = spreads.get(inputs) ?? costSpread(inputs.costs, inputs.retail.mean);
  spreads.set(inputs, spread);
  return spread;
}
