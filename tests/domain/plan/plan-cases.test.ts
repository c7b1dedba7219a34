import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { cents } from '../../../src/domain/money/cents.ts';
import { cashPath } from '../../../src/domain/plan/cash-path.ts';
import type { Bidding } from '../../../src/domain/plan/stage.ts';
import { type PlanBatch, type PlanMeans, workPlan } from '../../../src/domain/plan/worked-plan.ts';
import { instant } from '../../../src/domain/time/instant.ts';

/** Small worlds with the value and the best bids, written, with their exact answers, by somebody who had not read the code. */
interface PlanCase {
  readonly id: string;
  readonly why: string;
  readonly world: CaseWorld;
  /** Cents, exact; null where what binds us can't be paid. */
  readonly value: number | null;
  /** For each batch, every joint choice that is as good as any. */
  readonly bids: readonly { readonly lots: readonly string[]; readonly ok: readonly (readonly (number | null)[])[] }[];
}

interface CaseWorld {
  readonly lots: readonly CaseLot[];
  readonly purse: {
    readonly cash: number;
    readonly line?: number | null;
    readonly places?: number | null;
    readonly coming?: readonly { readonly at: number; readonly cash?: number; readonly places?: number }[];
  };
  readonly window?: number;
  readonly horizon?: number;
  readonly kept_dollar_worth?: number;
}

interface CaseLot {
  readonly id: string;
  readonly close: number;
  readonly points: readonly CasePoint[];
  readonly pin?: number;
  readonly skip?: boolean;
  readonly proxy?: number;
  readonly cash_only?: boolean;
}

interface CasePoint {
  readonly price: number;
  readonly cash: number;
  readonly profit: number;
  readonly prob: number;
  readonly floored?: { readonly cash: number; readonly line: number; readonly profit: number };
}

/** More than any purse, where there is no second way to pay. */
const NO_WAY = { cash: 1e12, line: 1e12, profit: 0 };

function biddingOf(lot: CaseLot): Bidding {
  const pays = ({ profit, floored }: CasePoint) => profit >= 0 || (!lot.cash_only && (floored?.profit ?? -1) >= 0);
  const refused = lot.points.findIndex((point) => !pays(point));
  const most = refused < 0 ? lot.points.length : refused;
  const bound = lot.points.findIndex(({ price }) => price === (lot.pin ?? lot.proxy));
  const points = lot.points.slice(0, lot.pin === undefined ? Math.max(most, bound + 1) : bound + 1);
  const numbers = (of: (point: CasePoint) => number) => Float64Array.from(points, of);
  const own = { cash: numbers(({ cash }) => cash), line: numbers(() => 0), profit: numbers(({ profit }) => profit) };
  const line = {
    cash: numbers(({ floored = NO_WAY }) => floored.cash),
    line: numbers(({ floored = NO_WAY }) => floored.line),
    profit: numbers(({ floored = NO_WAY }) => floored.profit),
  };
  const ways = lot.cash_only || !points.some(({ floored }) => floored) ? [own] : [own, line];
  const falling = ways.every(({ cash, profit, line: drawn }) =>
    points.every(
      (_, j) =>
        j === 0 ||
        (num(cash, j) >= num(cash, j - 1) &&
          num(drawn, j) >= num(drawn, j - 1) &&
          num(profit, j) <= num(profit, j - 1)),
    ),
  );
  return {
    points: { prices: points.map(({ price }) => cents(price)), chance: numbers(({ prob }) => prob), ways, falling },
    rule: 'best',
    bound,
  };
}

const num = (values: Float64Array, at: number): number => values[at] ?? 0;

function batchesOf({ lots, window = 0, horizon = Number.POSITIVE_INFINITY }: CaseWorld) {
  const batches: { at: number; lots: CaseLot[] }[] = [];
  let last = Number.NEGATIVE_INFINITY;
  for (const lot of [...lots].sort((a, b) => a.close - b.close)) {
    if (lot.skip || lot.close > horizon) continue;
    const batch = batches.at(-1);
    if (batch !== undefined && lot.close - last <= window) batch.lots.push(lot);
    else batches.push({ at: lot.close, lots: [lot] });
    last = lot.close;
  }
  return batches;
}

function meansOf({ purse: { cash, line, places, coming = [] }, kept_dollar_worth = 0 }: CaseWorld): PlanMeans {
  const flows = coming.map((each) => ({ at: instant(each.at), cents: cents(each.cash ?? 0), what: '' }));
  return {
    path: cashPath({ cash: cents(cash), flows, reaction: 0, overChance: 0 }, instant(0)),
    line: line ?? 0,
    places: places ?? null,
    freed: coming.map(({ at, places: freed = 0 }) => ({ at, places: freed })),
    keptDollar: kept_dollar_worth,
  };
}

const CASES: readonly PlanCase[] = JSON.parse(readFileSync('tests/fixtures/plan-cases.json', 'utf8'));

describe('worlds with known answers', () => {
  test.each(CASES)('$id: $why', ({ world, value, bids }) => {
    const batches = batchesOf(world);
    const worked = workPlan(
      batches.map(({ at, lots }): PlanBatch => ({ at, lots: lots.map(biddingOf) })),
      meansOf(world),
    );
    if (value === null) {
      expect(worked.value).toBeLessThan(-1e12);
      return;
    }
    expect(Math.abs(worked.value - value)).toBeLessThan(1);
    const planned = new Map<string, number | null>(
      batches.flatMap(({ lots }, i) =>
        lots.map((lot, j): [string, number | null] => [
          lot.id,
          biddingOf(lot).points.prices[worked.bids[i]?.[j]?.at ?? -1] ?? null,
        ]),
      ),
    );
    for (const { lots, ok } of bids) expect(ok).toContainEqual(lots.map((id) => planned.get(id) ?? null));
  });
});
