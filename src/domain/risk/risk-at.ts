import type { HoldCase } from '../carrying/hold-spread.ts';
import type { Deal, Funding } from '../deal/deal.ts';
import { type DealTotals, dealTotals, sumsAt } from '../deal/price-sums.ts';
import { type Cents, roundedCents } from '../money/cents.ts';
import { PPM, type Ppm } from '../money/rate.ts';
import type { Accepts } from '../price/accepted-intervals.ts';
import { type CostGrid, costGrid, gridStep, type UncertainCost } from './cost-grid.ts';
import { losesAtMost, RAREST_CELL } from './loss-chance.ts';
import {
  type Case,
  chanceOfProfitBelow,
  expectedProfit,
  meanRetail,
  type RetailSpread,
  worstCases,
} from './profit-spread.ts';

/** What is uncertain about a lot, in cents, beside the deal that counts all of it at its mean. */
export interface RiskInputs {
  /** Retail with a clean title, before a ceiling cuts it off at `cap`. */
  readonly retail: RetailSpread;
  /** Recon and doubts; each is in the deal's costs with its mean. */
  readonly costs: readonly UncertainCost[];
  readonly hold: (funding: Funding['kind']) => readonly HoldCase[];
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
  const { casesAt, retail } = riskOf(deal, inputs);
  const cases = casesAt(price);
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
  const { casesAt, retail } = riskOf(deal, inputs);
  return (price) => Math.min(1, chanceOfProfitBelow(0, casesAt(price), retail));
}

/**
 * The rule "the chance of losing money is at most `highest`", for `maxBid`. Between fee drops every case's cost rises
 * with the price, so the chance does too and what is accepted is a prefix.
 * @returns undefined when any chance will do, which saves the work of working it out
 */
export function lossChanceCap(deal: Deal, inputs: RiskInputs, highest: Ppm): Accepts | undefined {
  if (highest >= PPM) return undefined;
  const grid = costGrid(inputs.costs, gridStep(inputs.costs, 1000));
  const hold = inputs.hold(deal.funding.kind);
  // A billionth of slack: the order of additions must not decide a bid.
  return losesAtMost(dealTotals(deal), inputs.retail, grid, hold, highest / PPM + 1e-9);
}

function riskOf(deal: Deal, inputs: RiskInputs) {
  const totals = dealTotals(deal);
  const grid = costGrid(inputs.costs, gridStep(inputs.costs, 1000));
  const hold = inputs.hold(deal.funding.kind);
  return { retail: inputs.retail, casesAt: (price: Cents) => casesOf(totals, price, inputs.retail, grid, hold) };
}

/** Every way the deal can turn out but for retail: how much recon and doubt cost, when it sells, whether it is undone. */
function casesOf(
  totals: DealTotals,
  price: Cents,
  retail: RetailSpread,
  grid: CostGrid,
  hold: readonly HoldCase[],
): readonly Case[] {
  const { deal, costs, transport } = totals;
  const sums = sumsAt(totals, price);
  const mean = meanRetail(retail);
  // A what-if moves the deal's retail; its spread moves along, in proportion.
  const gain = mean === 0 ? 0 : (deal.titleKeeps / PPM) * (deal.retail / mean);
  const undone = deal.unwind.chance / PPM;
  const certain = costs + sums.allIn - transport;
  const cases: Case[] = [];
  for (const one of hold) {
    const base = certain + sums.financed * one.floor + sums.cash * one.cash + one.flat;
    grid.weights.forEach((chance, k) => {
      if (chance < RAREST_CELL) return;
      // The deal counts these costs, and the cash they tie up, at their mean.
      const over = k * grid.step - grid.mean;
      cases.push({ weight: (1 - undone) * one.chance * chance, gain, cost: base + over * (1 + one.cash) });
    });
  }
  if (undone > 0) cases.push({ weight: undone, gain: 0, cost: deal.unwind.fixed + price * (deal.unwind.rate / PPM) });
  return cases;
}
