import { expect, test } from 'vitest';
import { openDemo } from './demo.ts';
import type { Page } from './drivers/browser.ts';
import { useBrowser } from './drivers/use-browser.ts';
import { waitUntil } from './drivers/wait-until.ts';

const browser = useBrowser('America/Boise');
const LIST = 'options-page/index.html#/lots';

/** The first rows as the background has put them into words; empty when it has not yet. */
const kept = () =>
  browser.ask(
    () =>
      new Promise<string>((resolve) => {
        const opening = indexedDB.open('headroom');
        opening.onsuccess = () => {
          const asking = opening.result.transaction('meta').objectStore('meta').get('first-rows');
          opening.result.close();
          asking.onsuccess = () => resolve(JSON.stringify(asking.result ?? ''));
        };
      }),
  );

/** Opens the list in a new tab, and waits until it is whole. Gives how often lots were drawn: early, and by the list. */
async function openList(): Promise<{ page: Page; drawn: number }> {
  const page = await browser.open(LIST);
  await page.until(() => document.querySelector('.list-count')?.textContent?.includes(' of '));
  const drawn = await page.run(() => performance.getEntriesByName('lots-shown').length);
  return { page, drawn };
}

/** Runs in the page: whether the room that is left for the list's tools, before they come, is as high as they are. */
function toolsFit(tolerance: number): boolean {
  const room = document.createElement('div');
  room.className = 'list-tools-room';
  document.body.append(room);
  const off = room.offsetHeight - (document.querySelector<HTMLElement>('.list-tools')?.offsetHeight ?? 0);
  room.remove();
  return Math.abs(off) <= tolerance;
}

test('where nothing is kept yet the page comes as it is', async () => {
  const page = await browser.open(LIST);
  await page.until(() => document.querySelector('main h1') && document.querySelector('.store-clock .strong'));
  expect(await page.count('#first-rows, #opening')).toBe(0);
  expect(await page.run(() => performance.getEntriesByName('lots-shown').length)).toBe(1);
  // Not only there: seen.
  expect(await page.count('.store-clock')).toBe(1);
  await page.close();
});

test('the first rows stand before the program has come, and the list takes their place', async () => {
  const demo = await openDemo(browser);
  await demo.until(() => document.querySelector('.list-count')?.textContent?.includes(' of '));
  await waitUntil('the first rows to be kept', async () => (await kept()).includes('title'));
  const { page, drawn } = await openList();
  expect(drawn).toBe(2);
  expect(await page.count('.lot-table')).toBe(1);
  expect(await page.count('#first-rows, #opening')).toBe(0);
  for (const width of [1280, 1000, 600, 500, 400, 360]) {
    await page.resize(width, 800);
    // On a narrow screen a line more or less depends on the figures in it, and on the browser.
    await waitUntil(`the room for the tools to be as high as they are at ${width} px`, () =>
      page.run(toolsFit, width < 720 ? 28 : 4),
    );
  }
  await page.resize(1280, 800);
  await page.click('.lot-row .lot-name');
  await page.until(() => document.querySelector('.worksheet'));
  await page.close();
  await demo.close();
});

test('after a change they are put into words anew', async () => {
  const { page } = await openList();
  await page.click('.lot-row .lot-name');
  await page.until(() => document.querySelector('.worksheet'));
  await page.fill({ field: 'Price now' }, '12,345');
  await page.press('Enter');
  await waitUntil('the new price to be in the first rows', async () => (await kept()).includes('$12,345'));
  await page.close();
  // The plan is made anew from the new price, and the rows that hold its bids are put into words once more.
  await waitUntil('a list that begins with its first rows', async () => {
    const { page: again, drawn } = await openList();
    if (drawn === 2) await again.sees('$12,345');
    await again.close();
    return drawn === 2;
  });
});
