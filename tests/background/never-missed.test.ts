import { afterAll, beforeEach, describe, expect, test } from 'vitest';
import { HOUR, MINUTE } from '../../src/domain/time/units.ts';
import { freshBrowser } from '../store/open-test-store.ts';
import { InventedBrowser } from './invented-browser.ts';
import { at, lotsClosing, setUp, type Tally, tally, type Wanted, wantedFor } from './invented-saturday.ts';

const SATURDAY = '2026-11-28';
const START = at('2026-11-27', '18:50');
const BED = at('2026-11-27', '19:20');
const OPENING = at(SATURDAY, '09:20');
const END = at(SATURDAY, '12:30');
const CLOSES = ['10:40', '10:42', '10:43', '11:30', '12:05'].map((time) => at(SATURDAY, time));
const LOTS = lotsClosing(CLOSES);
const REMINDER = `rush ${at(SATURDAY, '10:00')}`;
const ROUNDS: Wanted[] = [
  { key: `digest ${SATURDAY}`, dueAt: at('2026-11-27', '19:00'), orElse: [REMINDER] },
  { key: REMINDER, dueAt: at(SATURDAY, '09:30'), orElse: [] },
];

const table: { fault: string; tally: Tally }[] = [];

/** The evening before, the night with the browser closed, and the Saturday, with whatever goes wrong in between. */
async function play(fault: string, goWrong: (browser: InventedBrowser) => Promise<void>, diesAt: number | null = null) {
  const browser = new InventedBrowser(START);
  const ids = await setUp(browser, LOTS);
  browser.diesAt = diesAt;
  await goWrong(browser);
  // Whatever happened, at last the browser runs in peace.
  browser.diesAt = null;
  await browser.wake();
  await browser.run(END + HOUR);
  const result = tally(wantedFor(LOTS, ids, ROUNDS), browser.said);
  table.push({ fault, tally: result });
  expect(result.missed, fault).toEqual([]);
  expect(browser.faults, fault).toEqual([]);
  return { result, browser };
}

const evening = async (browser: InventedBrowser) => {
  await browser.wake();
  await browser.run(BED);
  await browser.closedUntil(OPENING, true);
};

beforeEach(() => freshBrowser());

afterAll(() => {
  const cell = (text: string | number, width: number) => String(text).padStart(width);
  const lines = table.map(
    ({ fault, tally: t }) =>
      `| ${fault.padEnd(58)} |${cell(t.due, 5)} |${cell(t.inTime, 8)} |${cell(t.late, 5)} |${cell(t.doubled, 8)} |${cell(t.missed.length, 7)} |`,
  );
  console.log(
    [
      `| ${'fault'.padEnd(58)} |  due | in time | late | doubled | missed |`,
      `| ${'-'.repeat(58)} | ---: | ------: | ---: | ------: | -----: |`,
      ...lines,
    ].join('\n'),
  );
});

describe('no alert is missed', () => {
  test('when nothing goes wrong, and each comes once and in time', async () => {
    const { result } = await play('none', async (browser) => {
      await evening(browser);
      await browser.run(END);
    });
    expect(result).toMatchObject({ late: 0, doubled: 0 });
  });

  test('when the worker is killed at every step', async () => {
    const probe = new InventedBrowser(at(SATURDAY, '10:26'));
    await setUp(probe, LOTS);
    // A look with something to say of several lots, to know how many steps there are.
    const points = await probe.wake();
    expect(points).toBeGreaterThan(20);
    let worst: Tally | null = null;
    for (let point = 1; point <= points; point += 1) {
      freshBrowser();
      const browser = new InventedBrowser(at(SATURDAY, '10:10'));
      const ids = await setUp(browser, LOTS);
      browser.diesAt = point;
      await browser.wake();
      await browser.run(at(SATURDAY, '10:34'));
      const late = CLOSES.slice(0, 3);
      const wanted = wantedFor(LOTS.slice(0, late.length), ids.slice(0, late.length), []);
      const result = tally(
        wanted.filter(({ dueAt }) => dueAt > at(SATURDAY, '10:12') && dueAt < at(SATURDAY, '10:32')),
        browser.said,
      );
      expect(result.missed, `killed at step ${point}`).toEqual([]);
      if (worst === null || result.late > worst.late || result.doubled > worst.doubled) worst = result;
    }
    if (worst !== null)
      table.push({ fault: `worker killed at each of ${points} steps, every other life (worst)`, tally: worst });
  }, 240_000);

  test.each([true, false])('when the browser is closed over closings, its alarms lost: %s', async (lost) => {
    const { result } = await play(
      `browser closed from 10:20 to 11:20, alarms ${lost ? 'lost' : 'kept'}`,
      async (browser) => {
        await evening(browser);
        await browser.run(at(SATURDAY, '10:20'));
        await browser.closedUntil(at(SATURDAY, '11:20'), lost);
        await browser.run(END);
      },
    );
    expect(result.unlabelled).toEqual([]);
  });

  test('when the computer sleeps through the evening and the morning', async () => {
    const { browser } = await play('computer asleep from Friday 18:55 to Saturday 10:41', async (sleeper) => {
      await sleeper.wake();
      await sleeper.run(at('2026-11-27', '18:55'));
      sleeper.time = at(SATURDAY, '10:41');
      await sleeper.run(END);
    });
    // Back from sleep: one breath, not a flood.
    const back = browser.said.filter((one) => one.at < at(SATURDAY, '10:44'));
    expect(back.length).toBeLessThanOrEqual(4);
  });

  test('when another tab holds the lots', async () => {
    const { browser } = await play('store held by another tab from 10:20 to 10:50', async (held) => {
      await evening(held);
      await held.run(at(SATURDAY, '10:20'));
      held.held = true;
      await held.run(at(SATURDAY, '10:36'));
      expect(held.badge).toMatchObject({ text: '!' });
      // What the next closings need is kept in memory, and said from there.
      expect(held.said.at(-1)?.title).toContain('close');
      expect([...held.notices.keys()]).not.toContain('lots-held #/lots');
      await held.run(at(SATURDAY, '10:50'));
      held.held = false;
      await held.run(END);
    });
    expect([...browser.notices.keys()]).not.toContain('lots-held #/lots');
  });

  test.each(['not written', 'not opened'] as const)('when the disk is full and things are %s', async (full) => {
    const { browser } = await play(`disk full from 10:20 to 11:20, ${full}`, async (unlucky) => {
      await evening(unlucky);
      await unlucky.run(at(SATURDAY, '10:20'));
      unlucky.full = full;
      await unlucky.run(at(SATURDAY, '11:20'));
      const told = [...unlucky.notices.values()].filter(({ title }) => title.includes('can’t save'));
      expect(told).toHaveLength(1);
      expect(told[0]?.body).toContain('The disk is full');
      expect(told[0]?.body).not.toContain('restart');
      expect(unlucky.badge.title).not.toContain('restart');
      unlucky.full = null;
      await unlucky.wake();
      expect([...unlucky.notices.keys()].join()).not.toContain('not-saved');
      await unlucky.run(END);
    });
    const keys = browser.said.flatMap((one) => one.keys);
    const store = await browser.store();
    const recorded = await store.shownAlerts();
    store.close();
    expect(keys.filter((key) => !recorded.has(key))).toEqual([]);
  });

  test('when the lots are held and the browser has just started: that itself is said', async () => {
    const browser = new InventedBrowser(at(SATURDAY, '10:36'));
    await setUp(browser, LOTS);
    browser.held = true;
    await browser.wake('call-due');
    expect([...browser.notices.values()].map(({ title }) => title)).toEqual([
      'A reminder is due, and your lots can’t be read',
    ]);
    browser.held = false;
    await browser.wake();
    expect([...browser.notices.keys()]).not.toContain('lots-held #/lots');
  });

  test.each([
    ['two hours ahead', 2 * HOUR, 12],
    ['two hours behind', -2 * HOUR, 12],
    ['a day ahead', 24 * HOUR, 12],
    ['a day behind', -24 * HOUR, 12],
    ['40 minutes ahead', 40 * MINUTE, 6],
  ])('when the clock jumps %s and back', async (words, ahead, minutes) => {
    await play(`clock ${words} for ${minutes} min from 10:05`, async (browser) => {
      await evening(browser);
      await browser.run(at(SATURDAY, '10:05'));
      browser.clockAhead = ahead;
      await browser.wake();
      await browser.run(at(SATURDAY, '10:05') + minutes * MINUTE);
      browser.clockAhead = 0;
      await browser.run(END);
    });
  });

  test('when notices are turned off until later: the badge has them, and then they are said', async () => {
    const { browser } = await play('notices turned off until 10:45', async (silent) => {
      silent.noticesOff = true;
      await evening(silent);
      await silent.run(at(SATURDAY, '10:30'));
      expect(silent.said).toEqual([]);
      expect(silent.badge.urgent).toBe(true);
      expect(silent.badge.title).toContain('notifications are turned off');
      await silent.run(at(SATURDAY, '10:45'));
      silent.noticesOff = false;
      await silent.run(END);
    });
    expect(browser.badge.title).not.toContain('turned off');
  });

  test.each([
    ['forward', '2027-03-14', 'not', 0],
    ['forward', '2027-03-14', 'an hour ahead', HOUR],
    ['forward', '2027-03-14', 'an hour behind', -HOUR],
    ['back', '2026-11-01', 'not', 0],
    ['back', '2026-11-01', 'an hour ahead', HOUR],
    ['back', '2026-11-01', 'an hour behind', -HOUR],
  ])(
    'across the night in which the clocks go %s (%s), this one set wrong: %s',
    async (direction, date, wrong, ahead) => {
      const sunday = (time: string) => at(date, time);
      // Half past one and half past two: one of them comes twice, or does not exist.
      const moments = [sunday('01:30'), sunday('02:30'), sunday('03:30')];
      const lots = lotsClosing(moments);
      const browser = new InventedBrowser(sunday('01:30') - 9 * HOUR);
      const ids = await setUp(browser, lots);
      await browser.wake();
      await browser.run(sunday('01:26'));
      browser.clockAhead = ahead;
      await browser.wake();
      await browser.run(sunday('01:26') + 12 * MINUTE);
      browser.clockAhead = 0;
      await browser.run(sunday('03:30') + HOUR);
      const eve = new Date(Date.parse(`${date}T00:00Z`) - 86_400_000).toISOString().slice(0, 10);
      const wanted = wantedFor(lots, ids, [
        { key: `digest ${date}`, dueAt: at(eve, '19:00'), orElse: [] },
        { key: `rush ${sunday('01:00')}`, dueAt: sunday('01:00') - 30 * MINUTE, orElse: [] },
      ]);
      const result = tally(wanted, browser.said);
      const also = ahead === 0 ? '' : `, this one ${wrong} for 12 min`;
      table.push({ fault: `the clocks go ${direction} on ${date}${also}`, tally: result });
      expect(result).toMatchObject({ missed: [], unlabelled: [], due: wanted.length });
      if (ahead === 0) expect(result).toMatchObject({ late: 0, doubled: 0 });
    },
  );

  test('when 2,000 lots close in one hour: no flood, and none unsaid', async () => {
    const first = at(SATURDAY, '14:00');
    const lots = lotsClosing(Array.from({ length: 2000 }, (_, i) => first + i * 1800));
    const browser = new InventedBrowser(first - 62 * MINUTE);
    const ids = await setUp(browser, lots);
    await browser.wake();
    // The first calls come one by one; the rest is said on return.
    await browser.run(first - 57 * MINUTE);
    await browser.closedUntil(first + 2 * HOUR, true);
    const result = tally(wantedFor(lots, ids, []), browser.said);
    table.push({ fault: '2,000 closings in one hour, browser closed over most of them', tally: result });
    expect(result.missed).toEqual([]);
    expect(browser.said.length).toBeLessThan(20);
    const store = await browser.store();
    expect((await store.checkJournal()).findings).toEqual([]);
    store.close();
  });
});
