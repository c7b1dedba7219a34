import { describe, expect, test } from 'vitest';
import type { Closing } from '../../../src/domain/market/closing.ts';
import { marketOf } from '../../../src/domain/market/market.ts';
import { chanceWords } from '../../../src/domain/plan/chance-words.ts';
import type { Plan, PlanRow } from '../../../src/domain/plan/plan.ts';
import type { PlanLot } from '../../../src/domain/plan/plan-lot.ts';
import { planOf } from '../../../src/domain/plan/plan-of.ts';
import type { Purse } from '../../../src/domain/plan/purse.ts';
import { dollars, lotOf, minutes, NOW, purseOf } from './made-up.ts';

const { group } = lotOf('a', 1);
/** Vans of the venue that went for so much of our zero-profit hammer. */
const closings = (count: number, ratio = 0.95): Closing[] =>
  Array.from({ length: count }, (_, i) => ({
    group,
    at: NOW,
    zeroProfit: dollars(10_000),
    step: dollars(100),
    ending: { was: 'lost', price: dollars(Math.round(100 * (ratio + 0.01 * ((i % 9) - 4))) * 100) },
  }));
const known = marketOf(closings(30), minutes(1));
const plan = (lots: readonly PlanLot[], purse: Purse, market = known): Plan => planOf(lots, purse, market, NOW);
const rowOf = ({ rows }: Plan, id: string): PlanRow => rows.find(({ lotId }) => lotId === id) as PlanRow;
/** Lots half an hour apart, each a little better than the one before. */
const many = (count: number, more: Parameters<typeof lotOf>[2] = {}) =>
  Array.from({ length: count }, (_, i) => lotOf(`${i}`, 30 * (i + 1), { worth: 12_000 + 150 * i, ...more }));

describe('the plan of a purse', () => {
  test('bids less than the max on early lots when cash is short, and says why', () => {
    const short = plan(many(30), purseOf(14_000));
    const first = rowOf(short, '0');
    expect(first.maxBid).toBe(dollars(9_700));
    expect(first.plannedBid).toBeLessThan(dollars(9_700));
    expect(first.sentence).toMatch(
      /^Not one step more: the \$\d{1,2},\d+ it ties up is worth about \$\d,\d+ in the 29 lots still to come\.$/,
    );
    expect(first.chance?.words).toBe(chanceWords(first.chance?.chance ?? 0));
    expect(first.chance?.closings).toBe(30);
    const last = rowOf(short, '29');
    expect([last.plannedBid, last.reason.is]).toEqual([dollars(13_200), 'purse-ends']);
  });

  test('bids the max everywhere when the purse holds every car', () => {
    const rich = plan(many(10), purseOf(500_000));
    expect(rich.rows.every(({ maxBid, plannedBid }) => plannedBid === maxBid)).toBe(true);
    expect([rich.worthOfThousand, rich.worthOfPlace]).toEqual([0, 0]);
  });

  test('never plans a bid that costs more than there is, nor above the max bid', () => {
    for (const cash of [9_000, 10_040, 17_321.09, 60_000]) {
      for (const row of plan(many(12), purseOf(cash, { places: 2 })).rows) {
        expect(row.takes?.cash ?? 0).toBeLessThanOrEqual(dollars(cash));
        expect(row.plannedBid ?? 0).toBeLessThanOrEqual(row.maxBid ?? 0);
      }
    }
  });

  test('earns more with more cash, and less where prices run higher', () => {
    const [one, two] = [plan(many(20), purseOf(12_000)), plan(many(20), purseOf(24_000))];
    expect(two.profit).toBeGreaterThan(one.profit);
    expect(one.worthOfThousand).toBeGreaterThan(0);
    expect(one.ifPricesHigher).toBeLessThan(one.profit);
    expect(one.ifPricesLower).toBeGreaterThan(one.profit);
    expect(one.bounds.low).toBeLessThanOrEqual(one.profit);
    expect(one.bounds.high).toBeGreaterThanOrEqual(one.profit);
  });

  test('draws the cash left as a fan that only opens downward, with the cars and the profit so far', () => {
    const { fan, cars, profit } = plan(many(20), purseOf(30_000, { places: 2 }));
    expect(fan.map(({ lotId }) => lotId)).toEqual(many(20).map(({ id }) => id));
    fan.forEach((point, i) => {
      expect(point.cash.worst).toBeLessThanOrEqual(point.cash.likely);
      expect(point.cash.likely).toBeLessThanOrEqual(point.cash.best);
      expect(point.cash.worst).toBeGreaterThanOrEqual(0);
      expect(point.cars).toBeGreaterThanOrEqual(fan[i - 1]?.cars ?? 0);
    });
    expect([cars, profit]).toEqual([fan.at(-1)?.cars, fan.at(-1)?.profit]);
    expect(cars).toBeLessThanOrEqual(2);
  });

  test('below 20 closings keeps the max bid, checks that the purse reaches, and says so', () => {
    const few = marketOf(closings(19), minutes(1));
    const result = plan(many(30), purseOf(11_000), few);
    const first = rowOf(result, '0');
    expect([first.plannedBid, first.chance]).toEqual([dollars(9_700), null]);
    expect(first.sentence).toBe(
      'Only 19 closings of its group: too few to ration cash by (20 are needed). The max bid stands.',
    );
    // All-in of $800 beside the hammer: $10,200 is the last that $11,000 pays.
    expect(rowOf(result, '8')).toMatchObject({
      plannedBid: dollars(10_200),
      reason: { is: 'purse-ends', short: 'cash' },
    });
    expect(result.faults.map(({ about }) => about)).toEqual(['closings']);
  });

  test('holds money for a lot that the user wants, skips one, and leaves one at its max', () => {
    const lots = many(10).map((lot) => (lot.id === '9' ? { ...lot, choice: 'pinned' as const } : lot));
    const held = plan(lots, purseOf(12_000));
    expect(rowOf(held, '9')).toMatchObject({ plannedBid: dollars(11_000), reason: { is: 'pinned' } });
    expect(rowOf(held, '0')).toMatchObject({ plannedBid: null, reason: { is: 'held-for-pinned' } });
    const skipped = plan(many(3, { choice: 'skipped' }), purseOf(50_000));
    expect(skipped.rows.every(({ plannedBid }) => plannedBid === null)).toBe(true);
    const ignored = many(30).map((lot) => (lot.id === '0' ? { ...lot, choice: 'plan-ignored' as const } : lot));
    expect(rowOf(plan(ignored, purseOf(14_000)), '0')).toMatchObject({ plannedBid: dollars(9_700) });
  });

  test('counts the money of a proxy that is in once, and never plans below it', () => {
    const proxied = many(10).map((lot) => (lot.id === '9' ? { ...lot, proxy: dollars(10_000) } : lot));
    const result = plan(proxied, purseOf(20_000));
    expect(result.standing).toEqual({ cash: dollars(10_800), line: 0, cars: 1 });
    expect(rowOf(result, '9').plannedBid).toBeGreaterThanOrEqual(dollars(10_000));
    // $9,200 is left beside the proxy, $8,400 of it for a hammer price.
    expect(rowOf(result, '0').plannedBid).toBeLessThanOrEqual(dollars(8_400));
    expect(rowOf(result, '0').fitsBesideProxies).toBe(true);
    expect(result.faults).toEqual([]);
  });

  test('says when the proxies that are in could win more than the purse holds, and goes on', () => {
    const proxied = many(4).map((lot) => ({ ...lot, proxy: dollars(9_000) }));
    const result = plan(proxied, purseOf(15_000));
    expect(result.faults.map(({ sentence }) => sentence)).toEqual([
      'The 4 proxies that are in would take $39,200 of cash if all won, and there is $15,000. Lower or withdraw some.',
    ]);
    expect(result.rows.map(({ plannedBid }) => plannedBid)).toEqual([9_000, 9_000, 9_000, 9_000].map(dollars));
  });

  test('keeps bids that close together within the purse', () => {
    const together = Array.from({ length: 6 }, (_, i) => lotOf(`${i}`, 30 + i));
    const { rows } = plan(together, purseOf(21_000, { places: 3 }));
    const taken = rows.reduce((sum, { takes }) => sum + (takes?.cash ?? 0), 0);
    expect(taken).toBeGreaterThan(dollars(9_000));
    expect(taken).toBeLessThanOrEqual(dollars(21_000));
    expect(rows.filter(({ plannedBid }) => plannedBid === null).map(({ sentence }) => sentence)[0]).toMatch(
      /^It closes with 5 other lots/,
    );
  });

  test('lets bids that close together reach further where the user allows a chance of overspending', () => {
    const together = Array.from({ length: 8 }, (_, i) => lotOf(`${i}`, 30 + i));
    const bidsOf = (overChance: number) =>
      plan(together, purseOf(21_000, { overChance })).rows.filter((row) => row.plannedBid !== null);
    const [hard, loose] = [bidsOf(0), bidsOf(0.1)];
    expect(hard).toHaveLength(2);
    expect(loose.length).toBeGreaterThan(2);
  });

  test('spends money that comes in only from then on', () => {
    const lots = [lotOf('before', 30), lotOf('after', 90)];
    const flows = [{ at: minutes(60), cents: dollars(11_000), what: 'sale of the blue van' }];
    const result = plan(lots, { ...purseOf(5_000), flows });
    expect(rowOf(result, 'before').plannedBid ?? 0).toBeLessThanOrEqual(dollars(4_200));
    expect(rowOf(result, 'after').plannedBid).toBe(dollars(9_700));
  });

  test('pays branded titles from cash alone, and others from the line where that earns more', () => {
    const line = (id: string, floors: boolean) =>
      lotOf(id, id === 'a' ? 30 : 60, {
        waysAt: (price) => [
          { pool: 'cash', cash: price + 80_000, line: 0, profit: 1_120_000 - price },
          ...(floors ? [{ pool: 'line' as const, cash: 80_000, line: price, profit: 1_110_000 - price }] : []),
        ],
      });
    const purse = { ...purseOf(3_000), line: { free: dollars(10_000) } };
    const result = plan([line('a', false), line('b', true)], purse);
    expect(rowOf(result, 'a').plannedBid ?? 0).toBeLessThanOrEqual(dollars(2_200));
    expect(rowOf(result, 'b').plannedBid).toBe(dollars(9_700));
    expect(rowOf(result, 'b').takes).toEqual({ cash: dollars(800), line: dollars(9_700) });
  });
});

describe('one bad thing costs only itself', () => {
  test('a lot whose figures break, has no close, or has no max bid: the others are planned', () => {
    const broken = lotOf('broken', 30, {
      waysAt: () => {
        throw new RangeError('an amount came out as NaN cents');
      },
    });
    const result = plan(
      [broken, lotOf('none', null), lotOf('poor', 40, { maxBid: null }), lotOf('good', 60)],
      purseOf(20_000),
    );
    expect(rowOf(result, 'broken').reason.is).toBe('cant-work-out');
    expect(rowOf(result, 'none').reason.is).toBe('no-close');
    expect(rowOf(result, 'poor').reason.is).toBe('no-max-bid');
    expect(rowOf(result, 'good').plannedBid).toBe(dollars(9_700));
  });

  test('an overdrawn purse plans no bid, and says what to do', () => {
    const result = plan(many(3), purseOf(-1_250));
    expect(result.rows.every(({ plannedBid }) => plannedBid === null)).toBe(true);
    expect(result.faults[0]?.sentence).toMatch(
      /^The purse is overdrawn: \$1,250 more is promised or due than there is cash\./,
    );
    expect(plan(many(3), purseOf(50_000, { places: -1 })).rows.every(({ plannedBid }) => plannedBid === null)).toBe(
      true,
    );
  });

  test('no lots, no closings and no cash give an empty plan', () => {
    expect(plan([], purseOf(0), marketOf([], NOW))).toMatchObject({ rows: [], profit: 0, cars: 0, fan: [] });
  });
});

test.each([
  [0, 'less than 1 in 60'],
  [0.031, 'about 1 in 30'],
  [0.2, 'about 1 in 5'],
  [0.64, 'about 2 in 3'],
  [0.88, 'about 9 in 10'],
  [1, 'more than 9 in 10'],
])('a chance of %d is said as “%s”', (chance, words) => {
  expect(chanceWords(chance)).toBe(words);
});
