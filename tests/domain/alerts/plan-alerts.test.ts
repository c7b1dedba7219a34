import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type AlertLot, planAlerts } from '../../../src/domain/alerts/plan-alerts.ts';
import { instant } from '../../../src/domain/time/instant.ts';

const MINUTE = 60_000;
const T0 = 1_800_000_000_000;
const rules = { leadMinutes: [60, 15], placedLeadMinutes: [5] };

const lot = (id: string, closeMinute: number, placed = false): AlertLot => ({
  id,
  close: instant(T0 + closeMinute * MINUTE),
  name: `Car ${id}`,
  stop: 'Stop at $9,725.',
  closeWords: 'Sat 12:05 PM',
  placed,
});
const at = (minute: number) => instant(T0 + minute * MINUTE);
const plan = (lots: AlertLot[], minute: number, shownKeys: Iterable<string> = []) =>
  planAlerts({ lots, rules, shownKeys: new Set(shownKeys), now: at(minute) });

describe('the calls before a close', () => {
  test('says nothing before the first lead, and asks to be woken for it', () => {
    expect(plan([lot('a', 120)], 0)).toEqual({ due: [], next: at(60) });
  });

  test('names the car, the price at which to stop and what is left to do', () => {
    const { due } = plan([lot('a', 60)], 0);
    expect(due).toMatchObject([{ title: 'Car a closes in 1 h', loudness: 'loud' }]);
    expect(due[0]?.body).toBe('Stop at $9,725. Closes Sat 12:05 PM. No proxy is placed yet.');
  });

  test('calls once and softly for a lot whose proxy is placed', () => {
    expect(plan([lot('a', 60, true)], 0).due).toEqual([]);
    expect(plan([lot('a', 60, true)], 55).due).toMatchObject([{ loudness: 'quiet' }]);
  });

  test('says the last of the leads that passed, and never the others after it', () => {
    const { due } = plan([lot('a', 60)], 50);
    expect(due).toMatchObject([{ title: 'Late by 5 min: Car a closes in 10 min' }]);
    expect(
      plan(
        [lot('a', 60)],
        50,
        due.flatMap(({ keys }) => keys),
      ).due,
    ).toEqual([]);
  });

  test('says a close that nobody was told of, late and labelled late', () => {
    const { due } = plan([lot('a', 60)], 180);
    expect(due).toMatchObject([{ title: 'Late by 2 h 15 min: Car a closed 2 h ago' }]);
    expect(due[0]?.body).toContain('Nobody was told in time.');
  });

  test('calls anew when the close moves', () => {
    const shown = plan([lot('a', 60)], 0).due.flatMap(({ keys }) => keys);
    expect(plan([lot('a', 60)], 1, shown).due).toEqual([]);
    expect(plan([lot('a', 61)], 1, shown).due).toHaveLength(1);
  });

  test('folds 2,000 closings of one hour into one notice that counts them', () => {
    const many = Array.from({ length: 2000 }, (_, i) => lot(String(i), 60 + (i % 60)));
    const { due } = plan(many, 59);
    expect(due).toHaveLength(1);
    expect(due[0]?.title).toBe('2000 lots close soon, 2000 without a proxy');
    expect(due[0]?.body.split('\n')).toHaveLength(7);
  });
});

const wakes = fc.uniqueArray(fc.integer({ min: -30, max: 400 }), { maxLength: 12 });
const closes = fc.array(fc.tuple(fc.integer({ min: 0, max: 300 }), fc.boolean()), { minLength: 1, maxLength: 8 });

describe('under any wakes', () => {
  test('no lot passes its close by a day of the clock without having been said, and no key is said twice', () => {
    fc.assert(
      fc.property(closes, wakes, (list, minutes) => {
        const lots = list.map(([close, placed], i) => lot(String(i), close, placed));
        const shown = new Set<string>();
        for (const minute of [...minutes, 600]) {
          for (const key of plan(lots, minute, shown).due.flatMap(({ keys }) => keys)) {
            expect(shown.has(key)).toBe(false);
            shown.add(key);
          }
        }
        for (const { id } of lots) expect([...shown].some((key) => key.startsWith(`${id} `))).toBe(true);
      }),
    );
  });

  test('a worker that dies before it could record says the same again under the same id', () => {
    const first = plan([lot('a', 60)], 0).due;
    expect(plan([lot('a', 60)], 0).due).toEqual(first);
  });

  test('following `next` says every lead on its minute', () => {
    const lots = [lot('a', 100), lot('b', 75, true)];
    const said: number[] = [];
    const shown = new Set<string>();
    let minute = 0;
    for (let i = 0; i < 20; i += 1) {
      const { due, next } = plan(lots, minute, shown);
      for (const key of due.flatMap(({ keys }) => keys)) shown.add(key);
      if (due.length > 0) said.push(minute);
      if (next === null) break;
      minute = (next - T0) / MINUTE;
    }
    expect(said).toEqual([40, 70, 85]);
  });
});
