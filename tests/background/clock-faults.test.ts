import { beforeEach, expect, test } from 'vitest';
import { alertRulesSchema } from '../../src/domain/setup/alert-rules.ts';
import { DAY, HOUR, MINUTE } from '../../src/domain/time/units.ts';
import { readBackup } from '../../src/store/backup/read-backup.ts';
import { freshBrowser, value } from '../store/open-test-store.ts';
import { InventedBrowser } from './invented-browser.ts';
import { at, closeAt, setUp } from './invented-saturday.ts';
import { changeSetup, does, here, lot, moves, running, since } from './saturday-acts.ts';

beforeEach(() => freshBrowser());

test('a close that moved earlier is called at once, and says that it moved', async () => {
  const { browser, ids } = await running('12:00', [lot('Hauler', '15:00')]);
  await browser.run(here('12:56'));
  await moves(browser, ids[0], here('13:00'));
  const [call] = since(browser, here('12:56'));
  expect(call).toMatchObject({ loudness: 'loud' });
  expect(`${call?.title} ${call?.body}`).toMatch(/\$[\d,]+.*moved earlier/s);
});

test('extended time has a last call of its own, and nobody is asked how it ended meanwhile', async () => {
  const { browser, ids } = await running('12:00', [lot('Hauler', '14:00')]);
  await browser.run(here('13:58'));
  const from = browser.appeared.length;
  await does(browser, ids[0], { do: 'extended', minutes: 30, from: here('14:00') as never });
  await browser.run(here('14:30'));
  const later = browser.appeared.slice(from).map(({ notice }) => notice);
  expect(later.some(({ loudness, body }) => loudness === 'loud' && /extended/.test(body))).toBe(true);
  expect(later.some(({ title }) => /how did/.test(title))).toBe(false);
});

test('a close that moves by half a minute after its last call keeps the new time and is not called again', async () => {
  const { browser, ids } = await running('12:00', [lot('Hauler', '14:00')]);
  await browser.run(here('13:56'));
  const from = browser.appeared.length;
  await moves(browser, ids[0], here('14:00') + 30_000);
  await browser.run(here('14:00') + 30_000);
  expect(browser.appeared.slice(from).map(({ notice }) => notice.title)).toEqual([]);
});

test('a close that moves to next week is silent today, and in the list of the evening before', async () => {
  const { browser, ids } = await running('08:00', [lot('Hauler', '12:00')]);
  await browser.run(here('09:00'));
  await moves(browser, ids[0], here('12:00') + 7 * DAY);
  const from = browser.appeared.length;
  await browser.run(here('20:00'));
  expect(browser.appeared.slice(from).map(({ notice }) => notice.title)).toEqual([]);
  await browser.closedUntil(at('2026-12-04', '19:05'), true);
  expect(JSON.stringify(since(browser, at('2026-12-04', '19:00')))).toContain('Hauler');
});

test('what one browser said is said on another one that restores its backup, but for what was answered', async () => {
  const { browser, ids } = await running('08:00', [
    lot('First', '10:30'),
    lot('Second', '11:30'),
    lot('Third', '11:32'),
  ]);
  await browser.run(here('11:00'));
  await does(browser, ids[2], { do: 'bid', how: 'proxy', cents: 100_000 as never });
  const store = await browser.store();
  const file = await store.backup();
  store.close();
  const other = new InventedBrowser(here('11:05'), 'office');
  const fresh = await other.store();
  value(await fresh.restore(value(await readBackup(file.blob)), { mode: 'merge' }));
  fresh.close();
  await other.wake();
  await other.run(here('11:29'));
  const text = other.appeared.map(({ notice }) => `${notice.loudness} ${notice.title}`);
  expect(text.some((words) => words.startsWith('loud') && words.includes('Second'))).toBe(true);
  expect(text.filter((words) => words.includes('First') || words.includes('closed')).length).toBeLessThanOrEqual(1);
});

test('a backup of last week on the same browser brings one late notice at most, and the calls of today', async () => {
  const past = Array.from({ length: 60 }, (_, i) => ({
    ...lot(`Past ${i}`, '12:00'),
    close: closeAt(here('12:00') - 5 * DAY + i * HOUR),
  }));
  const today = Array.from({ length: 9 }, (_, i) => ({
    ...lot(`Today ${i}`, '12:00'),
    close: closeAt(here('12:00') + i * 10 * MINUTE),
  }));
  const browser = new InventedBrowser(here('10:00') - 7 * DAY);
  await setUp(browser, [...past, ...today]);
  const store = await browser.store();
  const file = await store.backup();
  store.close();
  await browser.closedUntil(here('10:00'), true);
  const again = await browser.store();
  value(await again.restore(value(await readBackup(file.blob)), { mode: 'replace' }));
  again.close();
  const from = browser.appeared.length;
  await browser.wake();
  await browser.run(here('13:25'));
  const titles = browser.appeared
    .slice(from)
    .map(({ notice }) => `${notice.loudness} ${notice.title} / ${notice.body}`);
  expect(titles.filter((title) => title.includes('Past'))).toHaveLength(1);
  for (const { model } of today)
    expect(titles.some((title) => title.startsWith('loud') && title.includes(model ?? ''))).toBe(true);
});

test('after sleep the lot that is still open is called first, the closed one once and late', async () => {
  const { browser } = await running('12:00', [lot('Closed', '13:00'), lot('Open', '13:25')]);
  await browser.run(here('12:40'));
  browser.time = here('13:20');
  const from = browser.appeared.length;
  await browser.wake();
  const titles = browser.appeared.slice(from).map(({ notice }) => `${notice.loudness} ${notice.title}`);
  expect(titles[0]).toMatch(/loud .*Open/);
  expect(titles.filter((title) => /Late.*Closed/.test(title))).toHaveLength(1);
});

test('an answer wins over a put-off of the other window', async () => {
  const { browser, ids } = await running('12:00', [lot('Hauler', '14:00')]);
  await browser.run(here('12:46'));
  await does(browser, ids[0], { do: 'put-off', minutes: 29 });
  browser.time += MINUTE;
  await does(browser, ids[0], { do: 'bid', how: 'proxy', cents: 1_000_000 as never });
  const from = browser.appeared.length;
  await browser.run(here('13:40'));
  expect(browser.appeared.slice(from).map(({ notice }) => notice.title)).toEqual([]);
});

test('after the browser was closed, one notice says what closed meanwhile, and that it is asked about later', async () => {
  const placed = (name: string, close: string) => ({ ...lot(name, close), proxy: 1_780_000 as never });
  const { browser } = await running('10:20', [
    placed('First', '11:00'),
    placed('Second', '11:30'),
    placed('Third', '12:40'),
  ]);
  await changeSetup(browser, { alerts: alertRulesSchema.parse({}) });
  await browser.run(here('10:45'));
  await browser.closedUntil(here('11:50'), true);
  await browser.run(here('12:30'));
  const [said, ...others] = since(browser, here('11:50')).filter(({ title }) => title.includes('closed'));
  expect(others).toEqual([]);
  expect(said?.title).toMatch(/^Late by 50 min: Headroom was not running: 2 lots closed since .* AM$/);
  expect(said?.body).toMatch(/First.*Second.*asked later/s);
  expect(said).toMatchObject({ loudness: 'quiet' });
});
