import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { goTo, openDemo } from './demo.ts';
import type { Surface } from './drivers/browser.ts';
import { servePages } from './drivers/page-server.ts';
import { useBrowser } from './drivers/use-browser.ts';

const browser = useBrowser('America/Boise');

test('closings are caught up on by keyboard, nothing typed is lost, and a lot’s life goes out as a pack that is checked', async () => {
  const page = await openDemo(browser);
  await goTo(page, '#/results/missing');
  const row = (index: number) => `input[data-row="${index}"]`;
  const focused = () => page.run(() => (document.activeElement as HTMLElement | null)?.dataset.row ?? '');
  await page.until(() => document.querySelectorAll('.closing-line').length > 3);
  await page.click(row(0));
  await page.fill(row(0), 'w 30000');
  await page.press('Enter');
  // Nobody noted a bid on it: who bid is asked above the list, and the likeliest answer has the focus.
  await page.sees('Who bid?');
  await page.until(() => Boolean(document.activeElement?.closest('.ask-box')));
  await page.press('Enter');
  await page.sees('Won at $30,000');
  expect(await focused()).toBe('1');
  // What can't be read stays where it is, also when the tab is loaded anew.
  await page.fill(row(1), 'bought it');
  await page.press('Enter');
  await page.sees('does not say how it ended');
  expect(await focused()).toBe('1');
  await page.reload();
  await page.until(() => [...document.querySelectorAll('input')].some((input) => input.value === 'bought it'));
  await page.click(row(0));
  await page.fill(row(0), 'n');
  await page.press('Enter');
  await page.sees('Not sold');

  await goTo(page, '#/results');
  await page.fill({ field: 'Search the results' }, '30000 nothing has this');
  await page.sees('None of the');
  await page.click({ button: 'Show all' });
  await page.choose({ field: 'Outcome' }, 'Won');
  await page.sees('Won at $30,000');
  await page.showAs({ print: true });
  await page.until(() => document.querySelectorAll('.printed-results tbody tr').length > 2);
  await page.showAs({});
  await page.until(() =>
    [...document.querySelectorAll('.result-row')].some((one) => one.textContent?.includes('$30,000')),
  );
  const life = await page.run(
    () =>
      [...document.querySelectorAll('.result-row')]
        .find((one) => one.textContent?.includes('$30,000'))
        ?.querySelector<HTMLAnchorElement>('.result-name')
        ?.hash.replace('lot', 'history') ?? '',
  );
  await goTo(page, life);
  await page.sees('What happened, in order');
  await page.upload('.life input[multiple]', 'tests/pictures/watchlist.png', 'tests/fixtures/lots-example.csv');
  await page.until(() => document.querySelector<HTMLImageElement>('.kept-file img')?.naturalWidth);
  await page.sees('lots-example.csv');
  const { name, text } = await page.download(() => page.click({ button: 'Save an evidence pack' }));
  expect(name).toMatch(/^evidence-.*\.html$/);
  await page.sees('Evidence pack checked');
  const folder = mkdtempSync(join(tmpdir(), 'pack-'));
  const file = join(folder, name);
  writeFileSync(file, text);
  // What comes back is checked by the program too, and told from its data and by the key that this browser knows.
  await page.upload('.life input[accept=".html,.htm"]', file);
  await page.sees('signed with the key it was known by before');
  await page.sees('What it can’t show:');
  const { stdout, status } = spawnSync(process.execPath, ['scripts/verify-pack.mjs', file], { encoding: 'utf8' });
  rmSync(folder, { recursive: true });
  expect(stdout).toMatch(/Number \d+ of device \w{10} is signed/);
  expect(stdout).toContain('"hammerCents":3000000');
  expect(status).toBe(0);
});

/** Answers with yes, or without a reason, whatever is asked of an invented lot, until the page says that it is done. */
async function answered(surface: Surface, words: string): Promise<void> {
  await surface.until((wanted) => {
    if (document.body.textContent.includes(wanted)) return true;
    const yes = [...document.querySelectorAll<HTMLElement>('.ask-box button')];
    yes.find((one) => /^(?:Yes|Save)/.test(one.textContent ?? ''))?.click();
    return false;
  }, words);
  // What is typed next must not meet a question that is about to go.
  await surface.until(() => document.querySelector('.ask-box') === null);
}

test('a proxy and a live bid become receipts on the worksheet, and a result said wrong is corrected', async () => {
  const page = await browser.open('options-page/index.html#/lots');
  await page.until(() => document.querySelectorAll('.lot-row').length > 3);
  const sheet = await page.run(
    () => document.querySelector<HTMLAnchorElement>('.lot-row:has(.lot-figure) .lot-name')?.hash ?? '',
  );
  await goTo(page, sheet);
  await page.fill({ field: 'Proxy placed' }, '9,000');
  await page.press('Enter');
  await answered(page, 'Proxy placed at $9,000');
  await page.fill({ field: 'Proxy placed' }, '9,500');
  await page.press('Enter');
  await answered(page, 'Proxy raised to $9,500');
  await page.fill({ field: 'Our live bid' }, '9,600');
  await page.press('Enter');
  await answered(page, 'Live bid $9,600');
  await page.click({ button: 'Ended early' });
  await page.fill({ field: 'How it ended' }, 'l 400000');
  await page.press('Enter');
  await page.sees('far above');
  await page.click({ button: 'Lost at $400,000' });
  await page.sees('Lost at $400,000');
  await page.fill({ field: 'Correct the result' }, 'l 14000');
  await page.press('Enter');
  await page.sees('Lost at $14,000');
  await goTo(page, sheet.replace('lot', 'history'));
  // The result that was corrected stays in its place.
  await page.sees('Lost at $400,000');
  await page.sees('Lost at $14,000');
});

test('from the popup a bid is kept with its page and a picture, and told so', async () => {
  const server = await servePages(
    () => '<!doctype html><title>Lot 7 of an invented sale</title><h1>High bid $9,600</h1>',
  );
  const page = await browser.open(server.strange('lot'));
  const popup = await browser.clickToolbarButton(page);
  await popup.until(() => document.querySelectorAll('.popup-note').length > 2);
  await popup.run(() => {
    const open = [...document.querySelectorAll<HTMLElement>('.popup-note')].find((one) =>
      one.textContent?.includes('Record a bid'),
    );
    open?.click();
  });
  await popup.click({ button: 'Live bid' });
  await popup.sees('Type the amount that you placed.');
  await popup.fill({ field: 'Amount' }, '9,600');
  await popup.click({ button: 'Live bid' });
  await answered(popup, 'Live bid $9,600: saved. Saved with a picture.');
  const id = await popup.run(
    () =>
      new Promise<string>((resolve) => {
        const request = indexedDB.open('headroom');
        request.onsuccess = () => {
          const all = request.result.transaction('lots').objectStore('lots').getAll();
          all.onsuccess = () => {
            request.result.close();
            resolve(all.result.find((lot) => lot.sale?.bids.some((bid: { page?: unknown }) => bid.page))?.id ?? '');
          };
        };
      }),
  );
  await popup.close();
  await page.close();
  await server.close();
  const life = await browser.open(`options-page/index.html#/history/${id}`);
  await life.sees('Lot 7 of an invented sale');
  await life.sees('Live bid $9,600');
  await life.until(() => document.querySelector<HTMLImageElement>('.kept-file img')?.naturalWidth);
});
