import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nowList } from '../../../src/domain/alerts/now-list.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { DAY, HOUR, MINUTE } from '../../../src/domain/time/units.ts';
import { bareRules, clockAt, inventedLot, planFor } from './invented-lots.ts';

/** "Nov 28 3:20 PM EDT" in November: 12:20 PM at the store if the letters hold, 1:20 PM if the wall time does. */
const FIRST = clockAt('2026-11-28', '12:20');
const SECOND = clockAt('2026-11-28', '13:20');
const lot = inventedLot('a', FIRST, { otherCloses: [SECOND] });
const rules = bareRules({ leadMinutes: [15, 5], afterCloseMinutes: 5 });
const keysOf = (due: readonly { keys: readonly string[] }[]) => due.flatMap(({ keys }) => keys);

describe('a lot whose close can mean two moments', () => {
  test('is called before each of them, says that it is in doubt and names both', () => {
    const [first] = planFor([lot], FIRST - 5 * MINUTE, { rules }).due;
    expect(first?.title).toBe('Car a may close in 5 min');
    expect(first?.body).toBe(
      'Stop at $9,725. No proxy is placed yet. Its close is in doubt: 12:20 PM or 1:20 PM. Choose the right one.',
    );
    const shown = [`a 15 ${FIRST}`, `a 5 ${FIRST}`];
    const { due } = planFor([lot], SECOND - 5 * MINUTE, { rules, shown });
    expect(due.map(({ title, loudness }) => ({ title, loudness }))).toEqual([
      { title: 'Car a may close in 5 min', loudness: 'loud' },
    ]);
  });

  test('is not asked between the two how it ended, and is after the second', () => {
    const shown = [`a 15 ${FIRST}`, `a 5 ${FIRST}`];
    expect(planFor([lot], FIRST + 10 * MINUTE, { rules, shown })).toEqual({ due: [], next: SECOND - 15 * MINUTE });
    const told = [...shown, `a 15 ${SECOND}`, `a 5 ${SECOND}`];
    expect(planFor([lot], SECOND + 5 * MINUTE, { rules, shown: told }).due.map(({ title }) => title)).toEqual([
      'Car a closed 5 min ago: how did it end?',
    ]);
  });

  test('says of a moment that passed without a call that it may have closed, aloud', () => {
    const [alert] = planFor([lot], FIRST + 2 * MINUTE, { rules }).due;
    expect(alert).toMatchObject({ title: 'Late by 7 min: Car a may have closed 2 min ago', loudness: 'loud' });
  });

  test('has one ladder once somebody has chosen', () => {
    const chosen = inventedLot('a', SECOND);
    expect(planFor([chosen], FIRST - 5 * MINUTE, { rules })).toEqual({ due: [], next: SECOND - 15 * MINUTE });
  });

  test('that are days apart stays open, under its next one, and stands in the list of both evenings', () => {
    const later = instant(FIRST + 29 * DAY);
    const far = inventedLot('a', FIRST, { otherCloses: [later] });
    const { today, unanswered } = nowList([far], FIRST + 9 * HOUR, FIRST + HOUR);
    expect([today.length, unanswered.length]).toEqual([1, 0]);
    expect(nowList([far], later + 9 * HOUR, later + HOUR).unanswered).toHaveLength(1);
    const evening = bareRules({ digestAt: '19:00' as never });
    const friday = planFor([far], clockAt('2026-11-27', '19:00'), { rules: evening });
    expect(friday.due.map(({ keys, body }) => ({ keys, body }))).toEqual([
      { keys: ['digest 2026-11-28'], body: '12:20 PM? Car a. Stop at $9,725.' },
    ]);
  });

  test('put off before the first, it is still called before the second', () => {
    const put = { ...lot, putOffUntil: instant(FIRST - 10 * MINUTE) };
    const shown = new Set<string>();
    const titles: string[] = [];
    for (let now: number | null = FIRST - 14 * MINUTE; now !== null && now < SECOND + HOUR; ) {
      const { due, next } = planFor([put], now, { rules, shown });
      for (const key of keysOf(due)) shown.add(key);
      titles.push(...due.map(({ title }) => title));
      now = next;
    }
    expect(titles).toEqual([
      'Car a may close in 10 min',
      'Car a may close in 15 min',
      'Car a may close in 5 min',
      'Car a closed 5 min ago: how did it end?',
    ]);
  });
});

test('every reading of every close is called in its time, whatever it is put off by and whenever it came in', () => {
  fc.assert(
    fc.property(
      fc.uniqueArray(fc.integer({ min: 20, max: 400 }), { minLength: 1, maxLength: 5 }),
      fc.option(fc.integer({ min: 1, max: 420 }), { nil: undefined }),
      (minutes, putOff) => {
        const readings = minutes.map((minute) => instant(FIRST + minute * MINUTE));
        const [close = FIRST, ...otherCloses] = readings;
        const doubtful = inventedLot('a', close, {
          otherCloses,
          ...(putOff !== undefined && { putOffUntil: instant(FIRST + putOff * MINUTE) }),
        });
        const said: number[] = [];
        const shown = new Set<string>();
        for (let now: number | null = FIRST; now !== null; ) {
          const { due, next } = planFor([doubtful], now, { rules, shown });
          for (const key of keysOf(due)) shown.add(key);
          if (due.length > 0) said.push(now);
          now = next;
        }
        for (const reading of readings)
          expect(said.some((at) => at < reading && at >= reading - 15 * MINUTE)).toBe(true);
      },
    ),
  );
});
