import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { AlertLot } from '../../../src/domain/alerts/alert-lot.ts';
import { MINUTE } from '../../../src/domain/time/units.ts';
import { bareRules, type Invention, inventedLot, planFor } from './invented-lots.ts';

const T0 = 1_800_000_000_000;
const lot = (id: string, closeMinute: number, more: Invention = {}) => inventedLot(id, T0 + closeMinute * MINUTE, more);
const at = (minute: number) => T0 + minute * MINUTE;
const plan = (lots: AlertLot[], minute: number, shown: Iterable<string> = [], rules = bareRules()) =>
  planFor(lots, at(minute), { shown, rules });
const keysOf = (due: readonly { keys: readonly string[] }[]) => due.flatMap(({ keys }) => keys);

describe('the reminders before a close', () => {
  test('say nothing before the first lead, and ask to be woken for it', () => {
    expect(plan([lot('a', 120)], 0)).toEqual({ due: [], next: at(60) });
  });

  test('name the car, the price at which to stop and what is left to do', () => {
    const { due } = plan([lot('a', 60)], 0);
    expect(due).toMatchObject([{ title: 'Car a closes in 1 h', loudness: 'quiet', route: '#/now/a' }]);
    expect(due[0]?.body).toMatch(
      /^Stop at \$9,725\. No proxy is placed yet\. Closes \w{3} \w{3} \d+, \d+:\d\d [AP]M\.$/,
    );
  });

  test('are soft, and the last one is loud', () => {
    const shown = keysOf(plan([lot('a', 60)], 0).due);
    expect(plan([lot('a', 60)], 45, shown).due).toMatchObject([{ title: 'Car a closes in 15 min', loudness: 'loud' }]);
  });

  test('say where it is sold, and the price with its time and what is left to the max bid', () => {
    const bid = {
      ...lot('a', 60).bid,
      price: { cents: 880_000 as never, seenAt: at(-600) as never, left: 92_500 as never },
    };
    const [alert] = plan([lot('a', 60, { bid, where: 'Saguaro Sale Yard, lot 7' })], 45).due;
    expect(alert?.body).toMatch(
      / Price \$8,800 on \w{3} \w{3} \d+, \d+:\d\d [AP]M, \$925 to go\. .* Saguaro Sale Yard, lot 7\.$/,
    );
  });

  test('come softly for a lot whose proxy is placed', () => {
    expect(plan([lot('a', 60, { placed: true })], 0).due).toEqual([]);
    expect(plan([lot('a', 60, { placed: true })], 55).due).toMatchObject([{ loudness: 'quiet' }]);
  });

  test('come once for a lot in another’s hands, aloud and with the name: a bid that nobody makes is nobody’s', () => {
    const handed = lot('a', 60, { handedTo: 'The closer' });
    expect(plan([handed], 0).due).toEqual([]);
    const [alert] = plan([handed], 45).due;
    expect(alert).toMatchObject({ title: 'The closer: Car a closes in 15 min', loudness: 'loud' });
    expect(alert?.body).toContain('The closer has it');
  });

  test('say the last of the leads that passed, and never the others after it', () => {
    const { due } = plan([lot('a', 60)], 50);
    expect(due).toMatchObject([{ title: 'Late by 5 min: Car a closes in 10 min' }]);
    expect(plan([lot('a', 60)], 50, keysOf(due)).due).toEqual([]);
  });

  test('are not late for a lot that came in after they were due', () => {
    expect(plan([lot('a', 60, { since: at(49) as AlertLot['since'] })], 50).due).toMatchObject([
      { title: 'Car a closes in 10 min' },
    ]);
  });

  test('say a close that nobody was told of, late and labeled late', () => {
    const { due } = plan([lot('a', 60)], 180);
    expect(due).toMatchObject([{ title: 'Late by 2 h 15 min: Car a closed 2 h ago', loudness: 'loud' }]);
    expect(due[0]?.body).toContain('You got no reminder in time.');
  });

  test('say nothing of a lot that came in after its close, or has its result, or is done with', () => {
    const closed = { since: at(100) as AlertLot['since'] };
    for (const more of [closed, { ended: true }, { done: true }])
      expect(plan([lot('a', 60, more)], 180, [], bareRules({ afterCloseMinutes: 5 }))).toEqual({ due: [], next: null });
  });

  test('come anew when the close moves', () => {
    const shown = keysOf(plan([lot('a', 60)], 0).due);
    expect(plan([lot('a', 60)], 1, shown).due).toEqual([]);
    expect(plan([lot('a', 61)], 1, shown).due).toHaveLength(1);
  });

  test('go by the lot’s own minutes where it has some, also when its proxy is placed', () => {
    const own = lot('a', 120, { ownLeads: [90], placed: true });
    expect(plan([own], 0).next).toBe(at(30));
    expect(plan([lot('a', 120, { ownLeads: [] })], 0).next).toBe(null);
  });
});

describe('the question after a close', () => {
  const rules = bareRules({ afterCloseMinutes: 5 });
  const lots = [lot('a', 60)];

  test('asks softly how it ended when somebody was told in time', () => {
    const told = keysOf([...plan(lots, 0, [], rules).due, ...plan(lots, 45, [], rules).due]);
    expect(plan(lots, 64, told, rules)).toEqual({ due: [], next: at(65) });
    expect(plan(lots, 65, told, rules).due).toMatchObject([
      {
        title: 'Car a closed 5 min ago: how did it end?',
        loudness: 'quiet',
        offers: [{ do: 'lost' }, { do: 'extended' }],
      },
    ]);
  });

  test('says so loudly when nobody was', () => {
    const [alert] = plan(lots, 65, [], rules).due;
    expect(alert).toMatchObject({ loudness: 'loud' });
    expect(alert?.body).toMatch(/^You got no reminder in time\./);
    expect(alert?.keys).toHaveLength(3);
  });
});

describe('lots that close almost together', () => {
  const rules = bareRules({ reactionMinutes: 3 });

  test('are named in one call, and not called again one by one', () => {
    const lots = [lot('a', 60), lot('b', 62), lot('c', 64), lot('d', 90)];
    const { due, next } = plan(lots, 0, [], rules);
    expect(due).toMatchObject([{ about: 'soons-c', loudness: 'quiet' }]);
    expect(due[0]?.title).toMatch(/^3 lots need a bid by \d+:\d\d [AP]M$/);
    expect(due[0]?.body.split('\n')).toHaveLength(3);
    expect(next).toBe(at(30));
    expect(plan(lots, 29, keysOf(due), rules).due).toEqual([]);
    expect(plan(lots, 30, keysOf(due), rules).due).toMatchObject([{ title: expect.stringMatching(/^4 lots need/) }]);
  });

  test('get their last call so early that one person can have every bid in, each with its number', () => {
    const lots = [lot('a', 60), lot('b', 60.5), lot('c', 61)];
    const told = keysOf(plan(lots, 0, [], rules).due);
    expect(told).toHaveLength(3);
    // The third is due at 46, the second three minutes before that, and the first another three.
    expect(plan(lots, 39, told, rules)).toEqual({ due: [], next: at(40) });
    const { due } = plan(lots, 40, told, rules);
    expect(due).toMatchObject([{ about: 'together-c', loudness: 'loud' }]);
    expect(due[0]?.title).toMatch(/^3 lots need a bid, the first in 20 min: they close from/);
    expect(due[0]?.body.match(/Stop at \$9,725/g)).toHaveLength(3);
    expect(plan(lots, 50, [...told, ...keysOf(due)], rules)).toEqual({ due: [], next: null });
  });

  test('are mentioned when only one of them needs a call', () => {
    const { due } = plan([lot('a', 60), lot('b', 61, { placed: true })], 45, [], rules);
    expect(due).toMatchObject([{ about: 'lot-a' }]);
    expect(due[0]?.body).toContain('1 other closes within minutes of it.');
  });

  test('600 closings of one hour never make a flood, and all are said', () => {
    const many = Array.from({ length: 600 }, (_, i) => lot(String(i), 120 + i * 0.1));
    const shown = new Set<string>();
    let notices = 0;
    for (let minute = 0; minute <= 190; minute += 2) {
      const { due } = plan(many, minute, shown, rules);
      notices += due.length;
      for (const key of keysOf(due)) shown.add(key);
    }
    for (const { id, close } of many)
      for (const lead of [60, 15]) expect(shown.has(`${id} ${lead} ${close}`)).toBe(true);
    expect(notices).toBeLessThan(60);
  });

  test('what came due meanwhile is a few notices that count, the greatest need first', () => {
    const many = Array.from({ length: 40 }, (_, i) => lot(String(i), i * 7));
    const { due } = plan(many, 130);
    expect(due.map(({ title, loudness }) => `${loudness} ${title.replace(/ \d+:.*/, '')}`)).toEqual([
      'loud Late by 12 min: 4 lots need a bid, the first in 3 min: they close from',
      'quiet Late by 29 min: 7 lots need a bid by',
      'loud Late by 2 h 25 min: 19 lots closed without a reminder in time',
    ]);
    expect(due[2]?.body.split('\n')).toHaveLength(9);
  });
});

describe('putting off, and time that was added', () => {
  test('is silent until then, then calls once, then as planned', () => {
    const put = lot('a', 60, { putOffUntil: at(10) as AlertLot['since'] });
    expect(plan([put], 5)).toEqual({ due: [], next: at(10) });
    const { due } = plan([put], 10);
    expect(due).toMatchObject([{ title: 'Car a closes in 50 min' }]);
    expect(plan([put], 10, keysOf(due))).toEqual({ due: [], next: at(45) });
  });

  test('comes back a minute before the close, however long it was put off', () => {
    expect(plan([lot('a', 60, { putOffUntil: at(500) as AlertLot['since'] })], 50).next).toBe(at(59));
  });

  test('time that was added calls for what is still ahead, and at least once more', () => {
    const added = lot('a', 65, { extendedAt: at(59) as AlertLot['since'] });
    expect(plan([added], 59)).toEqual({ due: [], next: at(62) });
    const long = lot('a', 100, { extendedAt: at(59) as AlertLot['since'] });
    expect(plan([long], 59)).toEqual({ due: [], next: at(85) });
  });
});

const wakes = fc.uniqueArray(fc.integer({ min: -30, max: 400 }), { maxLength: 12 });
const closes = fc.array(fc.tuple(fc.integer({ min: 0, max: 300 }), fc.boolean()), { minLength: 1, maxLength: 8 });

describe('under any wakes', () => {
  test('every lot is said, at its time or late, and no key is said twice', () => {
    fc.assert(
      fc.property(closes, wakes, fc.constantFrom(0, 3, 10), (list, minutes, reactionMinutes) => {
        const lots = list.map(([close, placed], i) => lot(String(i), close, { placed }));
        const shown = new Set<string>();
        for (const minute of [...minutes, 600]) {
          const rules = bareRules({ reactionMinutes, afterCloseMinutes: 5 });
          for (const key of keysOf(plan(lots, minute, shown, rules).due)) {
            expect(shown.has(key)).toBe(false);
            shown.add(key);
          }
        }
        for (const { id } of lots) expect([...shown].some((key) => key.startsWith(`${id} `))).toBe(true);
      }),
    );
  });

  test('a worker that dies before it could record says the same again about the same', () => {
    expect(plan([lot('a', 60)], 0).due).toEqual(plan([lot('a', 60)], 0).due);
  });

  test('following `next` says every call on its minute', () => {
    const lots = [lot('a', 100), lot('b', 75, { placed: true })];
    const said: number[] = [];
    const shown = new Set<string>();
    for (let minute: number | null = 0; minute !== null; ) {
      const { due, next } = plan(lots, minute, shown);
      for (const key of keysOf(due)) shown.add(key);
      if (due.length > 0) said.push(minute);
      minute = next === null ? null : (next - T0) / MINUTE;
    }
    expect(said).toEqual([40, 70, 85]);
  });
});
