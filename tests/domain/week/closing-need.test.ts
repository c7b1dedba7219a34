import { expect, test } from 'vitest';
import { greatestNeed, needOf } from '../../../src/domain/week/closing-need.ts';

const open = { ended: false, closed: false, placed: false, pastStop: false, inRush: false, offHands: false };

test('a close in the rush without a proxy is the danger; outside it is only bare', () => {
  expect(needOf({ ...open, inRush: true })).toBe('danger');
  expect(needOf(open)).toBe('bare');
  expect(needOf({ ...open, inRush: true, offHands: true })).toBe('bare');
});

test('what is placed or past its stop is no danger, in the rush or out of it', () => {
  expect(needOf({ ...open, inRush: true, placed: true, pastStop: true })).toBe('placed');
  expect(needOf({ ...open, inRush: true, pastStop: true })).toBe('past-stop');
});

test('what has closed needs its result, whatever was placed, until it is there', () => {
  expect(needOf({ ...open, closed: true, placed: true })).toBe('unsaid');
  expect(needOf({ ...open, closed: true, ended: true })).toBe('over');
});

test('a pile is as urgent as the most urgent in it', () => {
  expect(greatestNeed(['over', 'bare', 'danger', 'placed'])).toBe('danger');
  expect(greatestNeed(['placed', 'over'])).toBe('placed');
  expect(greatestNeed([])).toBe('over');
});
