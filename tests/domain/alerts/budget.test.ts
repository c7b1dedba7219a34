import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Alert } from '../../../src/domain/alerts/alert.ts';
import { withinBudget } from '../../../src/domain/alerts/budget.ts';
import { HOUR, MINUTE } from '../../../src/domain/time/units.ts';

const NOW = Date.UTC(2026, 10, 28, 20);
const alert = (rank: number, loudness: Alert['loudness'] = 'quiet'): Alert => ({
  about: `a-${rank}`,
  keys: [`k ${rank}`],
  title: `rank ${rank}`,
  body: '',
  loudness,
  route: '#/now',
  offers: [],
  rank: [rank, 0],
});
const LAST_CALL = alert(0, 'loud');
const DIGEST = alert(6, 'loud');
const QUESTION = alert(5);
const SOON = alert(2);

test('without a limit everything is said', () => {
  expect(withinBudget([SOON, QUESTION], [NOW, NOW - 1], null, NOW).held).toEqual([]);
});

test('a last call is said beyond the limit, and what needs no act waits until the hour has room', () => {
  const spoken = [NOW - 50 * MINUTE, NOW - 10 * MINUTE];
  const { due, held, next } = withinBudget([LAST_CALL, SOON, QUESTION, DIGEST], spoken, 2, NOW);
  expect(due).toEqual([LAST_CALL]);
  expect(held).toEqual([SOON, QUESTION, DIGEST]);
  expect(next).toBe(NOW + 10 * MINUTE);
});

test('a question leaves the last place of the hour to what needs somebody', () => {
  expect(withinBudget([QUESTION], [NOW - 10 * MINUTE], 2, NOW).held).toEqual([QUESTION]);
  expect(withinBudget([SOON], [NOW - 10 * MINUTE], 2, NOW).held).toEqual([]);
  expect(withinBudget([QUESTION], [NOW - HOUR], 2, NOW).held).toEqual([]);
});

test('nothing is lost, no last call is ever held, and the others never pass the limit', () => {
  const kind = fc.constantFrom(LAST_CALL, SOON, QUESTION, DIGEST, alert(3, 'loud'));
  const minutes = fc.array(fc.integer({ min: 0, max: 120 }), { maxLength: 8 });
  fc.assert(
    fc.property(fc.array(kind, { maxLength: 6 }), minutes, fc.integer({ min: 1, max: 6 }), (alerts, ago, most) => {
      const spoken = ago.map((each) => NOW - each * MINUTE);
      const { due, held, next } = withinBudget(alerts, spoken, most, NOW);
      expect([...due, ...held]).toHaveLength(alerts.length);
      expect(held.some(({ rank, loudness }) => rank[0] === 0 || (loudness === 'loud' && rank[0] < 6))).toBe(false);
      const waits = due.filter(({ rank, loudness }) => rank[0] !== 0 && (loudness === 'quiet' || rank[0] === 6));
      const recent = spoken.filter((at) => at > NOW - HOUR).length;
      if (waits.length > 0) expect(recent + waits.length).toBeLessThanOrEqual(Math.max(most, 1));
      if (held.length > 0) expect(next).toBeGreaterThan(NOW);
    }),
  );
});
