import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
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
const deals = z
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
  .parse(JSON.parse(readFileSync(new URL('../fixtures/chance-of-loss.json', import.meta.url), 'utf8')));

/** A tenth of a point. */
const NEAR = 0.001;

function chanceOf({ retail, ceiling, keeps, recon, fixed }: (typeof deals)[number], sigma: number): number {
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

describe('the chance of loss is within a tenth of a point of a simulation', () => {
  test.each(deals)('$note', (deal) => {
    const [low, likely, high] = deal.retail.map((dollars) => cents(dollars * 100));
    if (low === undefined || likely === undefined || high === undefined) throw new Error('three figures');
    const typed = Math.log(high / low) / 2.5631031;
    expect(Math.abs(chanceOf(deal, typed) - deal.typed)).toBeLessThan(NEAR);
    const guess = retailFromComps({
      guess: { low, likely, high },
      comps: [],
      subject: {},
      settings: DEFAULT_ESTIMATION,
    });
    expect(Math.abs(chanceOf(deal, guess?.sigma ?? 0) - deal.withCarSpread)).toBeLessThan(NEAR);
  });

  test('of thirty deals, half of them under a ceiling', () => {
    expect(deals).toHaveLength(30);
    expect(deals.filter(({ ceiling }) => ceiling !== null)).toHaveLength(17);
  });
});
