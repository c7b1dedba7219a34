import fc from 'fast-check';
import { expect, test } from 'vitest';
import { clusterMarks } from '../../src/ui/cluster-marks.ts';

const marks = fc.array(fc.record({ at: fc.integer({ min: 0, max: 1000 }) }), { maxLength: 60 });

test('every mark is in exactly one group, and no two groups stand nearer than asked', () => {
  fc.assert(
    fc.property(marks, fc.integer({ min: 1, max: 120 }), (list, nearest) => {
      const clusters = clusterMarks(list, nearest, 3);
      expect(clusters.flatMap((c) => c.marks).map((m) => m.at)).toEqual(list.map((m) => m.at).sort((a, b) => a - b));
      clusters.forEach((cluster, i) => {
        const before = clusters[i - 1];
        if (before !== undefined) expect(cluster.middle - before.middle).toBeGreaterThanOrEqual(nearest);
      });
    }),
  );
});

test('marks far apart stay alone, and neighbours within reach of each other collide', () => {
  const clusters = clusterMarks([{ at: 0 }, { at: 50 }, { at: 52 }, { at: 90 }], 10, 3);
  expect(clusters.map((c) => [c.marks.length, c.collides])).toEqual([
    [1, false],
    [2, true],
    [1, false],
  ]);
});
