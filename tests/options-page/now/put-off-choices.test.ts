import { expect, test } from 'vitest';
import { putOffChoices } from '../../../options-page/now/put-off-choices.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { MINUTE } from '../../../src/domain/time/units.ts';

const CLOSE = instant(Date.UTC(2026, 10, 28, 19, 5));
const choices = (minutesLeft: number, leads: readonly number[] = [60, 15, 5]) =>
  putOffChoices({ close: CLOSE }, leads, instant(CLOSE - minutesLeft * MINUTE)).map(({ words }) => words);

test('with time left a call can be put off by the minute', () => {
  expect(choices(30)).toEqual(['in 5 min', 'in 15 min']);
});

test('near the close the button says how near to it the call comes back, once', () => {
  expect(choices(12)).toEqual(['in 5 min', '5 min before']);
  expect(choices(8)).toEqual(['5 min before']);
  expect(choices(3)).toEqual(['1 min before']);
});

test('in the last minute nothing can be put off', () => {
  expect(choices(1)).toEqual([]);
});
