import { afterAll, expect, test } from 'vitest';
import type { Page } from './drivers/browser.ts';
import { openClockTab } from './drivers/open-clock-tab.ts';
import { useBrowser } from './drivers/use-browser.ts';
import { waitUntil } from './drivers/wait-until.ts';

const browser = useBrowser('America/Boise');
const MINUTE = 60;
/** Longer than the browser takes to wake anybody. */
const ALARM_MS = 75_000;

const table: string[] = [];
const note = (fault: string, due: number, missed: number) => {
  table.push(`| ${fault.padEnd(60)} | ${String(due).padStart(5)} | ${String(missed).padStart(6)} |`);
  expect(missed, fault).toBe(0);
};
afterAll(() => console.log([`in ${browser.name}:`, ...table].join('\n')));

const openTab = () => openClockTab(browser);

const add = (page: Page, seconds: readonly number[], leads: number[] | null = null) =>
  page.run((when, own) => window.clockProgram.add(when, own), seconds, leads);
const unsaid = (page: Page, ids: readonly string[]) =>
  page.run(async (which) => (await window.clockProgram.unsaid(which)).length, ids);
/** Asked once a second: each time opens the store and reads it. */
const allSaid = async (page: Page, ids: readonly string[]) => {
  await new Promise((resolve) => setTimeout(resolve, 1000));
  return (await unsaid(page, ids)) === 0;
};
const planAgain = (page: Page) => page.run(() => window.clockProgram.planAgain());
const badge = () => browser.ask(() => chrome.action.getBadgeText({}));
const noticeOf = (id: string) => async () => (await browser.noticeIds()).find((one) => one.startsWith(`lot-${id} `));

test('a call comes with its answers, leads to the Now screen, and is answered from the notice', async () => {
  const page = await openTab();
  await page.run(() => window.clockProgram.quiet());
  const [id = ''] = await add(page, [14 * MINUTE], [15]);
  await planAgain(page);
  const notice = await waitUntil('the call', noticeOf(id));
  await browser.clickNotice(notice);
  const now = await browser.pageAt(`options-page/index.html#/now/${id}`);
  await now.fill({ field: 'Your proxy' }, '9,100');
  await now.click({ button: 'I placed $9,100' });
  await now.sees('Placed $9,100');
  await now.click({ button: 'Ended early' });
  await now.fill({ field: 'Hammer price' }, '8,750');
  await now.click({ button: 'Won at $8,750' });
  await page.until(async (lot) => (await window.clockProgram.lot(lot))?.sale?.result, id);
  await now.until((lot) => document.getElementById(`now-${lot}`) === null, id);
  await now.click({ button: 'Undo' });
  await now.until((lot) => document.getElementById(`now-${lot}`), id);
  expect(await page.run(async (lot) => (await window.clockProgram.lot(lot))?.sale?.result ?? null, id)).toBeNull();
  await now.close();
  const [again = ''] = await add(page, [14 * MINUTE], [15]);
  await planAgain(page);
  const other = await waitUntil('the other call', noticeOf(again));
  const pressed = await browser.pressNoticeButton(other, 0);
  // Firefox has no buttons on notices; there the Now screen has them.
  expect(pressed).toBe(browser.name === 'chromium');
  if (pressed) {
    await page.until(async (lot) => (await window.clockProgram.lot(lot))?.clock?.putOffUntil, again);
    await waitUntil('the notice to go', async () => (await noticeOf(again)()) === undefined);
  }
  await page.close();
});

test('nothing is missed when the background is killed, the lots are held, or the alarm has to wake it', async () => {
  const page = await openTab();
  const killed: string[] = [];
  for (let round = 0; round < 8; round += 1) {
    killed.push(...(await add(page, [(9 + round / 10) * MINUTE])));
    await page.run((pause) => {
      void window.clockProgram.planAgain().catch(() => 'the background dies meanwhile');
      return new Promise((resolve) => setTimeout(resolve, pause));
    }, round * 12);
    await browser.killBackground();
  }
  await planAgain(page);
  note('background killed at 8 moments of a look', killed.length, await unsaid(page, killed));

  // A minute before its close, which is a little more than the half minute that alarms have to be set ahead.
  let woken = await add(page, [94], [1]);
  await planAgain(page);
  await browser.stopBackground();

  const held = await add(page, [8 * MINUTE]);
  await page.run(() => window.clockProgram.hold());
  await page.run(() => void window.clockProgram.planAgain().catch(() => 'it gives up, and says so on the badge'));
  await waitUntil('the badge to say that the lots are held', async () => (await badge()) === '!', 40_000);
  await page.run(() => window.clockProgram.release());
  await planAgain(page);
  note('lots held by another tab for 20 s', held.length, await unsaid(page, held));
  await waitUntil('the figure to come back', async () => (await badge()).endsWith('!') && (await badge()) !== '!');

  await browser.stopBackground();
  if ((await unsaid(page, woken)) === 0) {
    // It came due, or was said along with another, while the lots were looked at anyway, which proves nothing.
    woken = await add(page, [94], [1]);
    await planAgain(page);
    await browser.stopBackground();
  }
  await waitUntil('the alarm to wake the background', () => allSaid(page, woken), ALARM_MS);
  note('background killed, woken by its alarm', woken.length, await unsaid(page, woken));
  expect(await page.run(() => window.clockProgram.findings())).toBe(0);
  await page.close();
});

test('800 closings are no flood, and what closed while the browser was closed is said when it starts', async () => {
  const before = await openTab();
  const many = await add(
    before,
    Array.from({ length: 800 }, (_, i) => 60 + i * 2),
  );
  const begun = performance.now();
  await planAgain(before);
  const took = performance.now() - begun;
  note(`800 closings in half an hour, said in ${(took / 1000).toFixed(1)} s`, many.length, await unsaid(before, many));
  expect((await browser.noticeIds()).length).toBeLessThan(12);

  const closed = await add(before, [-10 * MINUTE, -25 * MINUTE, 3 * MINUTE]);
  await browser.restart('killed');
  const page = await openTab();
  await waitUntil('what closed meanwhile to be said', () => allSaid(page, closed));
  note('browser killed and started again', closed.length, await unsaid(page, closed));
  expect(await page.run(() => window.clockProgram.findings())).toBe(0);
  await page.close();
});
