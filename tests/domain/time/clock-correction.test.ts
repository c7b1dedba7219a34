import fc from 'fast-check';
import { expect, test } from 'vitest';
import { correctionKey, correctionsIn, putRight } from '../../../src/domain/time/clock-correction.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { HOUR } from '../../../src/domain/time/units.ts';

const NOON = Date.UTC(2026, 10, 28, 19);
const twoAhead = { showed: instant(NOON + 2 * HOUR), to: instant(NOON) };

test('what a clock ahead put down counts as the moment at which it was put right; all else stands', () => {
  expect(putRight(instant(NOON + HOUR), [twoAhead])).toBe(NOON);
  expect(putRight(instant(NOON + 2 * HOUR), [twoAhead])).toBe(NOON);
  expect(putRight(instant(NOON - 1), [twoAhead])).toBe(NOON - 1);
  expect(putRight(instant(NOON + 2 * HOUR + 1), [twoAhead])).toBe(NOON + 2 * HOUR + 1);
});

test('corrections are found again under their keys, whatever other keys there are, and never move a time forward', () => {
  const moment = fc.integer({ min: 0, max: 4e12 }).map(instant);
  const correction = fc.tuple(moment, moment).map(([a, b]) => ({
    showed: instant(Math.max(a, b)),
    to: instant(Math.min(a, b)),
  }));
  fc.assert(
    fc.property(fc.array(correction), moment, (all, at) => {
      const found = correctionsIn(['digest 2026-11-28', ...all.map(correctionKey), '01J 15 17']);
      expect(found).toEqual(all.toSorted((a, b) => b.to - a.to));
      expect(putRight(at, found)).toBeLessThanOrEqual(at);
    }),
  );
});
