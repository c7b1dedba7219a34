import { expect, test } from 'vitest';
import { retailErrors } from '../../../scripts/learn/say-learn.ts';
import { WIN_WORLDS, WINS, worldGap } from '../../../scripts/learn/win-worlds.ts';

test.each(WIN_WORLDS.slice(0, 3))(
  'in a market of $name the win correction brings most of what a haircut can bring, and more with more wins',
  (world) => {
    const { naive, best, closed } = worldGap(world, { logs: 80, lots: 8000, seed: 3 });
    expect(best).toBeGreaterThan(naive);
    expect(closed).toHaveLength(WINS.length);
    expect(closed[0]).toBeGreaterThan(0.6);
    expect(closed[3]).toBeGreaterThan(0.85);
    expect(closed[3]).toBeGreaterThan(closed[0] ?? 1);
  },
);

test('estimates that are too high are closer once corrected, and right ones stay about as they are', () => {
  const high = retailErrors({ perWeek: 3 }, 0.9, 3);
  expect(high.with).toBeLessThan(0.8 * high.without);
  const right = retailErrors({ perWeek: 3 }, 1, 3);
  expect(right.with).toBeLessThan(1.06 * right.without);
});
