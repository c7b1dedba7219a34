import { beforeEach, expect, test } from 'vitest';
import { noticeId, readNoticeId } from '../../src/background/notice-id.ts';
import type { LotId } from '../../src/domain/lot/lot.ts';
import { MINUTE } from '../../src/domain/time/units.ts';
import { freshBrowser, value } from '../store/open-test-store.ts';
import { InventedBrowser } from './invented-browser.ts';
import { at, lotsClosing, setUp } from './invented-saturday.ts';

const CLOSE = at('2026-11-28', '16:00');

beforeEach(() => freshBrowser());

/** A lot whose quarter-hour call is on the screen: soft, since it is not the last. */
async function called() {
  const browser = new InventedBrowser(CLOSE - 15 * MINUTE);
  const [id = ''] = await setUp(browser, lotsClosing([CLOSE]));
  await browser.wake();
  const notice = [...browser.notices.keys()].find((one) => one.startsWith(`soon-${id} `)) ?? '';
  const lot = async () => {
    const store = await browser.store();
    const found = await store.lot(id as LotId);
    store.close();
    return found;
  };
  return { browser, id, notice, lot };
}

test('putting a call off on its notice takes it away, keeps that in the journal, and calls again', async () => {
  const { browser, notice, lot } = await called();
  expect(browser.notices.get(notice)?.buttons).toEqual(['Remind me in 10 min', 'No more reminders']);
  await browser.press(notice, 0);
  expect((await lot())?.clock?.putOffUntil).toBe(CLOSE - 5 * MINUTE);
  expect(browser.notices.has(notice)).toBe(false);
  await browser.run(CLOSE - 4 * MINUTE);
  expect(browser.said.at(-1)?.title).toContain('closes in 5 min');
});

test('done on a notice ends the calls for that close, and an undo brings them back', async () => {
  const { browser, notice, lot, id } = await called();
  await browser.press(notice, 1);
  const before = browser.said.length;
  await browser.run(CLOSE - 3 * MINUTE);
  expect(browser.said).toHaveLength(before);
  const store = await browser.store();
  const done = (await store.historyOfLot(id as LotId)).at(-1);
  value(await store.undo(...(done === undefined ? [] : [done.id])));
  store.close();
  expect((await lot())?.clock).toBeUndefined();
  await browser.wake();
  expect(browser.said.length).toBe(before + 1);
});

test('time that the sale added moves the close, keeps the words of the page, and is told only once', async () => {
  const { browser, lot } = await called();
  await browser.run(CLOSE - 5 * MINUTE);
  await browser.wake();
  const last = [...browser.notices.keys()].find((one) => one.includes('extended:5:')) ?? '';
  await browser.press(last, 0);
  await browser.press(last, 0);
  const { facts, clock } = (await lot()) ?? {};
  expect(clock?.extended).toMatchObject({ minutes: 5, to: CLOSE + 5 * MINUTE });
  expect(facts?.close).toMatchObject({ instant: CLOSE + 5 * MINUTE, text: 'as the sale says it' });
});

test('an answer that can’t be kept is said, and nothing is kept', async () => {
  const { browser, notice, lot } = await called();
  browser.held = true;
  await browser.press(notice, 1);
  expect([...browser.notices.values()].map(({ title }) => title)).toContain('That was not saved');
  browser.held = false;
  expect((await lot())?.clock).toBeUndefined();
});

test('a notice of an older Headroom, or of nothing we know, leads to the list and answers nothing', async () => {
  for (const id of ['closings', 'close 01M89FVCMV001B4MDFZXXD1MV9', 'x javascript:alert(1)'])
    expect(readNoticeId(id)).toMatchObject({ route: '#/lots', offers: [] });
  const parts = { about: 'lot-a', route: '#/now/a', offers: [{ do: 'hand-over', to: 'A b' }, { do: 'done' }] } as const;
  expect(readNoticeId(noticeId(parts))).toEqual(parts);
});
