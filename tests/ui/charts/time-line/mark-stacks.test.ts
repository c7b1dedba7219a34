import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bracketsOf } from '../../../../src/ui/charts/time-line/brackets.ts';
import { stackMarks } from '../../../../src/ui/charts/time-line/mark-stacks.ts';

const WIDTH = 42;
const TRACK = 400;
const places = fc
  .array(fc.integer({ min: 0, max: TRACK }), { maxLength: 60 })
  .map((list) => list.sort((a, b) => a - b));
const stacksOf = (list: readonly number[]) =>
  stackMarks(
    list.map((at) => ({ at })),
    ({ at }) => at,
    WIDTH,
    TRACK,
  );

test('every mark is in one pile, in order, and no two piles overlap or leave the line', () => {
  fc.assert(
    fc.property(places, (list) => {
      const stacks = stacksOf(list);
      expect(stacks.flatMap(({ marks }) => marks.map(({ at }) => at))).toEqual(list);
      stacks.forEach(({ left }, i) => {
        expect(left).toBeGreaterThanOrEqual(i === 0 ? 0 : (stacks[i - 1]?.left ?? 0) + WIDTH);
        expect(left).toBeLessThanOrEqual(TRACK - WIDTH);
      });
    }),
  );
});

test('no mark is drawn further than half its width from its time, except where the line ends', () => {
  fc.assert(
    fc.property(places, (list) => {
      for (const { left, marks } of stacksOf(list))
        for (const { at } of marks)
          if (at > WIDTH / 2 && at < TRACK - 2 * WIDTH)
            expect(Math.abs(left + WIDTH / 2 - at)).toBeLessThanOrEqual(WIDTH / 2);
    }),
  );
});

test('a bracket spans the piles that a collision reaches, and two that would share a pile are one with both counts', () => {
  const marks = [100, 101, 120, 200, 201, 300].map((at) => ({ at }));
  const stacks = stackMarks(marks, ({ at }) => at, WIDTH, TRACK);
  const [a, b, c, d, e] = marks;
  if (a === undefined || b === undefined || c === undefined || d === undefined || e === undefined) throw new Error();
  expect(bracketsOf(stacks, [{ closings: [a, b] }, { closings: [d, e] }], WIDTH)).toEqual([
    { left: 79, right: 121, count: 2 },
    { left: 179, right: 221, count: 2 },
  ]);
  expect(bracketsOf(stacks, [{ closings: [a, b] }, { closings: [c, d] }], WIDTH)).toEqual([
    { left: 79, right: 221, count: 4 },
  ]);
});
