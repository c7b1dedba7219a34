import { describe, expect, test } from 'vitest';
import type { Closing } from '../../../src/domain/market/closing.ts';
import { marketOf } from '../../../src/domain/market/market.ts';
import type { MarketGroup } from '../../../src/domain/market/market-group.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { DAY } from '../../../src/domain/time/units.ts';

const WEEKEND = instant(1_000);
const vans: MarketGroup = { carClass: 'van', title: '', seller: '', venue: 'v1' };
const trucks: MarketGroup = { ...vans, carClass: 'truck' };

/** Lots that were only watched, and went for so much of our zero-profit hammer. */
function watched(group: MarketGroup, ratios: readonly number[], at = 0): Closing[] {
  return ratios.map((ratio) => ({
    group,
    at: instant(at),
    zeroProfit: cents(1_000_000),
    step: cents(2_500),
    ending: { was: 'lost', price: cents(Math.round(ratio * 1_000_000)) },
  }));
}
const USUAL = [0.92, 0.97, 0.9, 0.95, 0.99, 0.94, 0.93, 0.96, 1.01, 0.91, 0.95, 0.94];
const raised = (by: number) => USUAL.map((ratio) => ratio * (1 + by));

describe('what closings teach', () => {
  test('counts for half after each half-life, as an independent program has it', () => {
    // A log of six closings, 0 to 720 days old, and its chances by brute force in Python, by somebody who had not read the code.
    const log: readonly (readonly [daysAgo: number, ending: Closing['ending'], bid?: number])[] = [
      [0, { was: 'won', price: cents(889_420) }, 950_000],
      [90, { was: 'lost', price: cents(1_030_455) }, 950_000],
      [180, { was: 'lost', price: cents(951_229) }, 900_000],
      [360, { was: 'lost', price: cents(907_337) }, 904_837],
      [720, { was: 'lost-unknown' }, 923_116],
      [30, { was: 'lost', price: cents(1_105_171) }],
    ];
    const now = instant(800 * DAY);
    const [base] = watched(vans, [1]);
    const closings = log.map(([daysAgo, ending, bid]): Closing => {
      const at = instant(now - daysAgo * DAY - 1);
      return { ...(base as Closing), at, ending, ...(bid !== undefined && { bid: cents(bid) }) };
    });
    const market = marketOf(closings, now, { halfLife: 180 });
    const usual = market.levels().find(({ level }) => level === 0);
    const bids = [-0.3, -0.15, -0.1, -0.05, 0, 0.05, 0.1, 0.25];
    const chances = [0.00501, 0.05313, 0.1102, 0.20992, 0.35339, 0.51774, 0.66978, 0.92349];
    const off = bids.map((x, i) => Math.abs((usual?.curveOf(vans).below(x) ?? 0) - (chances[i] ?? 0)));
    expect(Math.max(...off)).toBeLessThan(0.004);
    // 1 + 0.71 + 0.5 + 0.25 + 0.06 + 0.89.
    expect(market.closingsOf(vans)).toBe(3);
    const unforgotten = marketOf(closings, now, { halfLife: Number.POSITIVE_INFINITY });
    expect(unforgotten.closingsOf(vans)).toBe(6);
    expect(Math.abs(unforgotten.curveOf(vans).below(0) - market.curveOf(vans).below(0))).toBeGreaterThan(0.005);
  });

  test('counts those of the group that say something', () => {
    const silent: Closing = { ...(watched(vans, [1])[0] as Closing), ending: { was: 'lost-unknown' } };
    const market = marketOf([...watched(vans, USUAL), silent, ...watched(trucks, [1], 2_000)], WEEKEND);
    expect([market.closingsOf(vans), market.closingsOf(trucks), market.closingsOf({ ...vans, venue: 'v2' })]).toEqual([
      12, 1, 0,
    ]);
    expect(market.level.closings).toBe(1);
  });

  test('is weaker for a group that it was not learned in, and still something', () => {
    const high = raised(0.2);
    const [none, learned] = [marketOf([], WEEKEND), marketOf(watched(vans, high), WEEKEND)];
    const below = (market: typeof none, group: MarketGroup) => market.curveOf(group).below(0);
    expect(below(learned, vans)).toBeLessThan(below(learned, trucks));
    expect(below(learned, trucks)).toBeLessThan(below(none, trucks));
  });

  test('shifts the weekend for every group, and the next weekend for none', () => {
    const history = [...watched(vans, USUAL), ...watched(trucks, USUAL)];
    const before = marketOf(history, WEEKEND);
    const after = marketOf([...history, ...watched(vans, raised(0.1), 2_000)], WEEKEND);
    expect(before.level.mean).toBeCloseTo(0, 12);
    // The grid ends at 27%, so the standard deviation is not 6% to the last digit.
    expect(before.level.sd).toBeCloseTo(0.06, 4);
    expect(after.level.mean).toBeGreaterThan(0.04);
    expect(after.level.mean).toBeLessThan(0.1);
    expect(after.level.sd).toBeLessThan(before.level.sd);
    expect(after.curveOf(trucks).below(0)).toBeLessThan(before.curveOf(trucks).below(0) - 0.05);
    const levelBefore = marketOf([...history, ...watched(vans, raised(0.1), 500)], WEEKEND).level;
    expect(levelBefore.mean).toBeCloseTo(0, 12);
  });

  test('is the same after more closings of this weekend as from the start', () => {
    const history = [...watched(vans, USUAL), ...watched(trucks, raised(0.05))];
    const seen = [...watched(vans, raised(0.1), 2_000), ...watched({ ...vans, venue: 'v2' }, [1.1], 2_000)];
    const [whole, later] = [marketOf([...history, ...seen], WEEKEND), marketOf(history, WEEKEND).after(seen)];
    expect(later.level.mean).toBeCloseTo(whole.level.mean, 12);
    expect(later.closingsOf(vans)).toBe(whole.closingsOf(vans));
    expect(later.curveOf(trucks).below(0)).toBeCloseTo(whole.curveOf(trucks).below(0), 12);
  });

  test('gives levels whose average is the weekend’s, and whose curves average to the group’s', () => {
    const market = marketOf([...watched(vans, USUAL), ...watched(trucks, raised(0.05), 2_000)], WEEKEND);
    const nodes = market.levels();
    expect(nodes.reduce((sum, { chance }) => sum + chance, 0)).toBeCloseTo(1, 5);
    expect(nodes.reduce((sum, { chance, level }) => sum + chance * level, 0)).toBeCloseTo(market.level.mean, 2);
    for (const x of [-0.15, -0.05, 0.05]) {
      const mixed = nodes.reduce((sum, { chance, curveOf }) => sum + chance * curveOf(vans).below(x), 0);
      // Eleven levels in place of 41.
      expect(Math.abs(mixed - market.curveOf(vans).below(x))).toBeLessThan(0.02);
    }
  });
});
