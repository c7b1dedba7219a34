import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { Market } from '../../../src/domain/market/market.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import type { PayWay, PlanLot } from '../../../src/domain/plan/plan-lot.ts';
import { planOf } from '../../../src/domain/plan/plan-of.ts';
import { dollars, minutes, NOW } from './made-up.ts';

interface OracleLot {
  readonly close: number;
  readonly worth: number;
  readonly costs: number;
  readonly max: number;
  readonly prices: readonly number[];
  readonly chances: readonly number[];
  readonly interest: number;
  readonly advance: number;
  readonly branded: boolean;
  readonly sealed: boolean;
  readonly wanted: boolean;
}
interface World {
  readonly name: string;
  readonly lots: readonly OracleLot[];
  readonly purse: { readonly cash: number; readonly line: number | null; readonly places: number | null };
  readonly answer: { readonly value: number; readonly bids: readonly (readonly (readonly number[])[])[] };
}
/** Worlds and answers of plan-oracle.py beside it, an independent program that tries every bid at every state. */
const WORLDS: readonly World[] = JSON.parse(readFileSync('tests/fixtures/plan-oracle.json', 'utf8'));

const zeroOf = ({ worth, costs }: OracleLot): number => worth - costs;

/** Rivals whose limits are known for each lot, and no weekend that runs high or low. */
function marketOfWorld(lots: readonly OracleLot[]): Market {
  const curveOf: Market['curveOf'] = ({ venue }) => {
    const lot = lots[Number(venue)] as OracleLot;
    const below = (x: number) => {
      const price = zeroOf(lot) * Math.exp(x) + 0.5;
      return lot.chances.reduce((sum, chance, i) => ((lot.prices[i] ?? 0) <= price ? sum + chance : sum), 0);
    };
    return { below };
  };
  const market: Market = {
    level: { mean: 0, sd: 0, closings: 0 },
    curveOf,
    closingsOf: () => 100,
    levels: () => [{ level: 0, chance: 1, curveOf }],
    after: () => market,
  };
  return market;
}

const planLotOf = (lot: OracleLot, i: number, hasLine: boolean): PlanLot => ({
  id: String(i),
  name: `Lot ${i}`,
  close: minutes(20 * (lot.close + 1)),
  maxBid: dollars(lot.max),
  increments: [{ fromCents: cents(0), stepCents: dollars(500) }],
  zeroProfit: dollars(zeroOf(lot)),
  waysAt: (price): readonly PayWay[] => {
    const allIn = price + lot.costs * 100;
    const profit = lot.worth * 100 - allIn;
    const drawn = Math.floor((price * lot.advance) / 100);
    const own: PayWay = { pool: 'cash', cash: allIn, line: 0, profit };
    const line: PayWay = { pool: 'line', cash: allIn - drawn, line: drawn, profit: profit - lot.interest * 100 };
    return hasLine && !lot.branded ? [line, own] : [own];
  },
  group: { carClass: '', title: '', seller: '', venue: String(i) },
  ...(lot.sealed && { sealed: true }),
  ...(lot.wanted && { choice: 'pinned' as const }),
});

test('plans of small worlds earn and bid what an independent program finds by trying everything', () => {
  const wrong = WORLDS.flatMap(({ name, lots, purse, answer }) => {
    const plan = planOf(
      lots.map((lot, i) => planLotOf(lot, i, purse.line !== null)),
      {
        cash: dollars(purse.cash),
        ...(purse.line !== null && { line: { free: dollars(purse.line) } }),
        ...(purse.places !== null && { places: purse.places }),
        flows: [],
        reaction: 60_000,
        overChance: 0,
      },
      marketOfWorld(lots),
      NOW,
    );
    const value =
      Math.abs(plan.profit / 100 - answer.value) > 0.011 ? [`${name}: ${plan.profit / 100} for ${answer.value}`] : [];
    let from = 0;
    const bids = answer.bids.flatMap((right, batch) => {
      const count = right[0]?.length ?? 0;
      const ours = plan.rows.slice(from, from + count).map(({ plannedBid }) => (plannedBid ?? 0) / 100);
      from += count;
      return right.some((one) => one.join() === ours.join())
        ? []
        : [`${name}, batch ${batch}: ${ours} for ${right.join(' or ')}`];
    });
    return [...value, ...bids];
  });
  expect(WORLDS.length).toBeGreaterThanOrEqual(30);
  expect(wrong).toEqual([]);
});
