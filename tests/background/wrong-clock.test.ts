import { beforeEach, describe, expect, test } from 'vitest';
import type { LotFacts } from '../../src/domain/lot/lot.ts';
import { HOUR, MINUTE } from '../../src/domain/time/units.ts';
import { freshBrowser, value } from '../store/open-test-store.ts';
import { InventedBrowser } from './invented-browser.ts';
import { at, lotsClosing, setUp } from './invented-saturday.ts';

const SATURDAY = '2026-11-28';
const here = (time: string) => at(SATURDAY, time);

beforeEach(() => freshBrowser());

/** A browser that runs from then on, with the setup of the invented store and these lots. */
async function running(from: string, lots: readonly LotFacts[] = []) {
  const browser = new InventedBrowser(here(from));
  await setUp(browser, lots);
  await browser.wake();
  return browser;
}

async function addLots(browser: InventedBrowser, lots: readonly LotFacts[]): Promise<readonly string[]> {
  const store = await browser.store();
  const added = value(
    await store.addLots(
      'file',
      lots.map((facts) => ({ facts })),
    ),
  );
  store.close();
  await browser.wake();
  return added.lots;
}

async function put(browser: InventedBrowser, ahead: number): Promise<void> {
  browser.clockAhead = ahead;
  await browser.wake();
}

const saidOf = (browser: InventedBrowser, name: string, from: number, to: number) =>
  browser.said.filter(({ title, at: when }) => title.includes(name) && when >= from && when < to);
const clockNotes = (browser: InventedBrowser) => browser.said.filter(({ title }) => title.includes('was put back'));

describe.each([2, 26])('while the clock stood %i hours ahead', (hours) => {
  test('lots that came in are no history: each is called before its real close, and the clock is told of once', async () => {
    const browser = await running('09:50');
    await put(browser, hours * HOUR);
    const closes = ['11:30', '13:30', '14:10', '14:40', '15:10', '15:40', '16:20', '17:00'].map(here);
    const ids = await addLots(browser, lotsClosing(closes));
    await browser.run(here('10:20'));
    await put(browser, 0);
    expect(clockNotes(browser).map(({ title }) => title)).toEqual([
      `This computer’s clock was put back by about ${hours} h`,
    ]);
    await browser.run(here('17:20'));
    for (const [i, close] of closes.entries()) {
      const calls = browser.said.filter(({ keys, at: when }) => {
        return keys.includes(`${ids[i]} 5 ${close}`) && when >= close - 6 * MINUTE && when < close;
      });
      expect(calls, `the last call of lot ${i}`).toHaveLength(1);
      expect(saidOf(browser, `Hauler ${i} closed`, here('10:20'), close), 'asked before its close').toEqual([]);
    }
    expect(clockNotes(browser)).toHaveLength(1);
    const store = await browser.store();
    const text = await (await store.backup()).blob.text();
    store.close();
    // The journal keeps what the wrong clock showed when they came in, and when it was put right.
    const added = text.split('\n').filter((line) => line.includes('"lots-added"') && line.includes('"source":"file"'));
    expect(added).toEqual([expect.stringContaining(`"at":${here('09:50') + hours * HOUR},`)]);
    expect(text.match(/"clock-put-right"/g)).toHaveLength(1);
  });
});

test('what was said too early by a clock ahead is said again at its time, and says why', async () => {
  const browser = await running('11:40', lotsClosing([here('14:00')]));
  await put(browser, 2 * HOUR);
  await browser.run(here('11:56'));
  expect(saidOf(browser, 'Hauler 0 closes in 5 min', here('11:54'), here('11:57'))).toHaveLength(1);
  await put(browser, 0);
  await browser.run(here('14:00'));
  const again = saidOf(browser, 'Hauler 0 closes in 5 min', here('13:54'), here('13:57'));
  expect(again.map(({ title }) => title)).toEqual(['Again, after the clock was put: Hauler 0 closes in 5 min']);
  const store = await browser.store();
  const text = await (await store.backup()).blob.text();
  store.close();
  expect(text.match(/"alerts-voided"/g)).toHaveLength(1);
});

test('a clock that is set back by mistake and put right says nothing a second time, and misses nothing', async () => {
  const browser = await running('08:50', lotsClosing([here('10:15'), here('12:30'), here('13:00')]));
  await browser.run(here('12:00'));
  const before = browser.said.length;
  await put(browser, -3 * HOUR);
  await browser.run(here('12:20'));
  await put(browser, 0);
  await browser.run(here('13:10'));
  const later = browser.said.slice(before);
  expect(later.filter(({ title }) => title.includes('Hauler 0') && !title.startsWith('Again'))).toEqual([]);
  expect(saidOf(browser, 'Hauler 1', here('12:19'), here('12:30'))).not.toEqual([]);
  expect(saidOf(browser, 'Hauler 2 closes', here('12:50'), here('13:00'))).not.toEqual([]);
  const early = new Set(browser.said.slice(0, before).flatMap(({ keys }) => keys));
  const asNew = later.filter(({ title }) => !title.startsWith('Again')).flatMap(({ keys }) => keys);
  expect(asNew.filter((key) => early.has(key))).toEqual([]);
});

test('a look while nothing can be written takes the clock as it is, and keeps its correction later', async () => {
  const browser = await running('09:50');
  await put(browser, 2 * HOUR);
  await addLots(browser, lotsClosing([here('11:30')]));
  browser.full = 'not written';
  await put(browser, 0);
  await browser.run(here('11:28'));
  expect(saidOf(browser, 'Hauler 0 closes', here('11:14'), here('11:30'))).not.toEqual([]);
  browser.full = null;
  await browser.wake();
  const store = await browser.store();
  expect([...(await store.shownAlerts()).keys()].filter((key) => key.startsWith('clock-put-right'))).toHaveLength(1);
  store.close();
});
