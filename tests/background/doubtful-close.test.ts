import { beforeEach, expect, test } from 'vitest';
import { pickCloseTime } from '../../src/domain/time/close-time.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { HOUR, MINUTE } from '../../src/domain/time/units.ts';
import { freshBrowser, value } from '../store/open-test-store.ts';
import { InventedBrowser } from './invented-browser.ts';
import { at, closeAt, setUp } from './invented-saturday.ts';

beforeEach(() => freshBrowser());

const doubtful = (first: number, second: number) => ({
  ...closeAt(first),
  doubts: ['day-order' as const],
  otherwise: [instant(second)],
});

test('a lot whose date can be Nov 12 or Dec 11 is called before both, though nobody answers for a month', async () => {
  const [november, december] = [at('2026-11-12', '12:00'), at('2026-12-11', '12:00')];
  const browser = new InventedBrowser(november - 2 * HOUR);
  await setUp(browser, [{ model: 'Hauler', close: doubtful(november, december) }]);
  await browser.wake();
  await browser.run(november + HOUR);
  const titles = () => browser.said.map(({ title }) => title);
  expect(titles()).toContain('Hauler may close in 5 min');
  expect(titles().join()).not.toContain('how did it end');
  await browser.closedUntil(december - 2 * HOUR, true);
  const before = titles().length;
  await browser.run(december + HOUR);
  expect(titles().slice(before)).toEqual(
    expect.arrayContaining(['Hauler may close in 5 min', 'Hauler closed 5 min ago: how did it end?']),
  );
});

test('once somebody has chosen the later hour, nothing is said at the earlier one', async () => {
  const [first, second] = [at('2026-11-30', '12:20'), at('2026-11-30', '13:20')];
  const browser = new InventedBrowser(first - 30 * MINUTE);
  const close = doubtful(first, second);
  const [id = ''] = await setUp(browser, [{ model: 'Hauler', close }]);
  const store = await browser.store();
  value(await store.changeLot(id as never, { set: { close: pickCloseTime(close, instant(second)) } }));
  store.close();
  await browser.wake();
  await browser.run(second - 2 * MINUTE);
  expect(browser.said.map(({ title }) => title)).toEqual([
    'Hauler closes in 1 h',
    'Hauler closes in 15 min',
    'Hauler closes in 5 min',
  ]);
});
