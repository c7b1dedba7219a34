import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { closeTogether, collisionsOf } from '../../../src/domain/rush/collisions.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { MINUTE } from '../../../src/domain/time/units.ts';

const closing = (id: string, minute: number) => ({ id, close: instant(1_800_000_000_000 + minute * MINUTE) });

describe('closings that collide', () => {
  test('are named together when each follows within the reaction time', () => {
    const [a, b, c, d, e] = [closing('a', 0), closing('b', 3), closing('c', 6), closing('d', 9.5), closing('e', 20)];
    const found = collisionsOf([e, c, a, d, b], 3);
    expect(found).toEqual([{ closings: [a, b, c], first: a.close, last: c.close }]);
  });

  test('collide at the very same moment even without a reaction time', () => {
    expect(collisionsOf([closing('a', 0), closing('b', 0), closing('c', 1)], 0)).toHaveLength(1);
  });

  test('do not when there is one, or none', () => {
    expect(collisionsOf([closing('a', 0)], 3)).toEqual([]);
    expect(collisionsOf([], 3)).toEqual([]);
  });

  test('keep every closing once, in order, with no two groups within reach', () => {
    const closings = fc
      .array(fc.integer({ min: 0, max: 120 }))
      .map((list) => list.map((minute, i) => closing(`${i}`, minute)));
    fc.assert(
      fc.property(closings, fc.integer({ min: 0, max: 10 }), (list, reaction) => {
        const groups = closeTogether(list, reaction);
        const flat = groups.flat();
        expect(flat.map(({ id }) => id).toSorted()).toEqual(list.map(({ id }) => id).toSorted());
        groups.forEach((group, i) => {
          const next = groups[i + 1]?.[0];
          const last = group.at(-1);
          if (next && last) expect(next.close - last.close).toBeGreaterThan(reaction * MINUTE);
          group.forEach((one, j) => {
            const before = group[j - 1];
            if (before) expect(one.close - before.close).toBeLessThanOrEqual(reaction * MINUTE);
          });
        });
      }),
    );
  });
});
