import { describe, expect, test } from 'vitest';
import type { Closing } from '../../../src/domain/market/closing.ts';
import { marketOf } from '../../../src/domain/market/market.ts';
import type { Plan, PlanRow } from '../../../src/domain/plan/plan.ts';
import type { PlanLot } from '../../../src/domain/plan/plan-lot.ts';
import { planOf } from '../../../src/domain/plan/plan-of.ts';
import type { Purse } from '../../../src/domain/plan/purse.ts';
import { dollars, lotOf, minutes, NOW, purseOf } from './made-up.ts';

const closings: readonly Closing[] = Array.from({ length: 30 }, (_, i) => ({
  group: lotOf('a', 1).group,
  at: NOW,
  zeroProfit: dollars(10_000),
  step: dollars(100),
  ending: { was: 'lost', price: dollars(9_100 + 100 * (i % 9)) },
}));
const market = marketOf(closings, minutes(1));
const plan = (lots: readonly PlanLot[], purse: Purse): Plan => planOf(lots, purse, market, NOW);
const rowOf = ({ rows }: Plan, id: string): PlanRow => rows.find(({ lotId }) => lotId === id) as PlanRow;
const said = ({ faults }: Plan): string => faults.map(({ sentence }) => sentence).join(' ');
const five = (more: Readonly<Record<string, Parameters<typeof lotOf>[2]>> = {}): PlanLot[] =>
  ['a', 'b', 'c', 'd', 'e'].map((id, i) => lotOf(id, 30 * (i + 1), more[id] ?? {}));

describe('what is doubtful is said, and costs only itself', () => {
  test('proxies that take more than there is: nothing is bid beside them, and each shows what it should be', () => {
    const over = plan(five({ d: { proxy: dollars(9_000) }, e: { proxy: dollars(9_500) } }), purseOf(15_000));
    expect(['a', 'b', 'c'].map((id) => rowOf(over, id).plannedBid)).toEqual([null, null, null]);
    expect(rowOf(over, 'a').sentence).toMatch(/held for other bids/);
    expect(rowOf(over, 'd')).toMatchObject({ plannedBid: dollars(9_000), reason: { is: 'proxy' } });
    expect(said(over)).toMatch(
      /The 2 proxies that are in would take \$20,100 of cash if all won, and there is \$15,000/,
    );
  });

  test('lots that are wanted give way to proxies, and the others are planned', () => {
    const wants = { b: { choice: 'pinned' as const }, c: { choice: 'pinned' as const } };
    const tight = plan(five({ ...wants, e: { proxy: dollars(9_000) } }), purseOf(21_000));
    expect(rowOf(tight, 'e').plannedBid).toBeGreaterThanOrEqual(dollars(9_000));
    expect(rowOf(tight, 'a').plannedBid).not.toBeNull();
    expect(said(tight)).toMatch(/want one lot less/);
  });

  test('a proxy above the max bid is held whole, and its row does not call it the max bid', () => {
    const above = plan(five({ e: { proxy: dollars(12_000) } }), purseOf(60_000));
    expect(rowOf(above, 'e')).toMatchObject({ plannedBid: dollars(12_000), reason: { is: 'proxy' } });
    expect(above.standing.cash).toBe(dollars(12_800));
    expect(said(above)).toBe(
      'The proxy on Lot e is $2,300 above its max bid. All of it is held; lower it if the sale lets you.',
    );
  });

  test('a max bid many times those of the others is remarked upon', () => {
    const slip = plan(five({ b: { worth: 120_000 } }), purseOf(200_000));
    expect(said(slip)).toMatch(
      /^The max bid on Lot b is \$117,700, 12 times the middle of these lots\. Check its retail/,
    );
    expect(said(plan(five({ b: { worth: 40_000 } }), purseOf(200_000)))).toBe('');
  });

  test('a lot whose title nobody stated is planned from own cash beside a floor line, and that is said', () => {
    const [first, ...others] = five({ a: { untitled: true } });
    const given = [first as PlanLot, ...others];
    expect(said(plan(given, purseOf(60_000, { line: { free: dollars(20_000) } })))).toBe(
      'Lot a has no title stated: priced at full retail, and planned from own cash only. Enter the title.',
    );
    expect(said(plan(given, purseOf(60_000)))).toBe('');
  });

  test('cash that pays for no bid is said once, with what a bid takes at least', () => {
    const thousands = plan(five(), purseOf(30));
    expect(thousands.rows.every(({ plannedBid }) => plannedBid === null)).toBe(true);
    expect(said(thousands)).toMatch(
      /^The cash reaches for no lot: the least that a bid takes is \$[\d,]+, and there is \$30\./,
    );
  });
});
