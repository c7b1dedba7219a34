import { readFileSync } from 'node:fs';
import * as z from 'zod/mini';
import type { Deal } from '../../src/domain/deal/deal.ts';
import { cents, roundedCents } from '../../src/domain/money/cents.ts';
import { factor, ppm } from '../../src/domain/money/rate.ts';
import { DEFAULT_ESTIMATION } from '../../src/domain/retail/estimation.ts';
import { retailFromComps } from '../../src/domain/retail/retail-from-comps.ts';
import { countedCost } from '../../src/domain/risk/cost-spread.ts';
import { type RiskInputs, riskAt } from '../../src/domain/risk/risk-at.ts';
import { meanBelowCap } from '../../src/domain/statistics/lognormal.ts';

/**
 * Written by somebody who had not read the code: deals and their chance of loss, computed independently from four million
 * draws of recon with the exact normal probability for each (numpy and scipy). Dollars; recon as low, likely, high and
 * chance. `typed` takes the range for all the doubt there is, `withCarSpread` for doubt about the level of the price.
 */
export const LOSS_DEALS = z
  .array(
    z.strictObject({
      note: z.string(),
      retail: z.tuple([z.number(), z.number(), z.number()]),
      ceiling: z.nullable(z.number()),
      keeps: z.number(),
      recon: z.array(z.tuple([z.number(), z.number(), z.number(), z.number()])),
      fixed: z.number(),
      typed: z.number(),
      withCarSpread: z.number(),
    }),
  )
  .parse(JSON.parse(readFileSync('tests/fixtures/chance-of-loss.json', 'utf8')));

type LossDeal = (typeof LOSS_DEALS)[number];

function chanceOf({ retail, ceiling, keeps, recon, fixed }: LossDeal, sigma: number): number {
  const costs = recon.map(([low, likely, high, chance]) => ({
    low: low * 100,
    likely: likely * 100,
    high: high * 100,
    chance,
  }));
  const mean = retail[1] * 100;
  const cap = ceiling === null ? undefined : ceiling * 100;
  const deal: Deal = {
    retail: cap === undefined ? cents(mean) : roundedCents(meanBelowCap({ mean, sigma }, cap)),
    titleKeeps: ppm(Math.round(keeps * 1e6)),
    costs: costs.map((cost) => ({ kind: 'recon', label: 'Recon', cents: cents(countedCost(cost)) })),
    fees: [],
    charges: [],
    funding: {
      kind: 'cash',
      advance: ppm(0),
      advanceOnFees: false,
      floorFactor: factor(0),
      cashFactor: factor(0),
      flatHold: cents(0),
    },
    rule: { dollars: cents(0), shareOfRetail: ppm(0), perCash: factor(0) },
    unwind: { chance: ppm(0), fixed: cents(0), rate: ppm(0) },
    increments: [{ fromCents: cents(0), stepCents: cents(2500) }],
  };
  const atOnce = [{ chance: 1, floor: 0, cash: 0, flat: 0 }];
  const inputs: RiskInputs = {
    retail: { mean, sigma, cap },
    costs,
    hold: () => ({ few: atOnce, byDay: atOnce }),
  };
  return riskAt(deal, roundedCents(fixed * 100), inputs).lossChance;
}

/** The chance of loss by the program, with the spread as it was typed and with a car's own on top. */
export function lossChancesOf(deal: LossDeal): { readonly typed: number; readonly withCarSpread: number } {
  const [low, likely, high] = deal.retail.map((dollars) => cents(dollars * 100));
  if (low === undefined || likely === undefined || high === undefined) throw new Error('three figures');
  const guess = retailFromComps({ guess: { low, likely, high }, comps: [], subject: {}, settings: DEFAULT_ESTIMATION });
  return {
    typed: chanceOf(deal, Math.log(high / low) / 2.5631031),
    withCarSpread: chanceOf(deal, guess?.sigma ?? 0),
  };
}
