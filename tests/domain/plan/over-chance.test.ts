import { describe, expect, test } from 'vitest';
import { overChance } from '../../../src/domain/plan/over-chance.ts';

const stake = (cost: number, ...chances: number[]) => ({
  cash: [cost],
  line: [0],
  chances: chances.map((each) => [each]),
});
const room = (cash: number, places: number | null = null) => ({ cash, line: 0, places });

describe('the chance that bids win more than there is', () => {
  test('is that of both of two winning where the purse holds one', () => {
    expect(overChance([stake(60, 0.2), stake(60, 0.3)], [1], room(100))).toBeCloseTo(0.06, 12);
    expect(overChance([stake(50, 0.2), stake(50, 0.3)], [1], room(100))).toBeCloseTo(0, 12);
    expect(overChance([stake(10, 0.2), stake(10, 0.3)], [1], room(100, 1))).toBeCloseTo(0.06, 12);
    expect(overChance([stake(10, 0.2)], [1], room(0))).toBeCloseTo(0.2, 12);
  });

  test('is larger when lots are high and low together than when each goes its own way', () => {
    const apart = [stake(60, 0.3), stake(60, 0.3), stake(60, 0.3)];
    const together = [stake(60, 0.1, 0.5), stake(60, 0.1, 0.5), stake(60, 0.1, 0.5)];
    const [one, other] = [overChance(apart, [1], room(150)), overChance(together, [0.5, 0.5], room(150))];
    expect(one).toBeCloseTo(0.3 ** 3, 12);
    expect(other).toBeCloseTo((0.1 ** 3 + 0.5 ** 3) / 2, 12);
    expect(other).toBeGreaterThan(2 * one);
  });
});
