import { describe, expect, test } from 'vitest';
import type { Closing } from '../../../src/domain/market/closing.ts';
import { marketOf } from '../../../src/domain/market/market.ts';
import type { MarketGroup } from '../../../src/domain/market/market-group.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import { instant } from '../../../src/domain/time/instant.ts';

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
