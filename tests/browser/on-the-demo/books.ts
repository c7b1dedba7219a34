import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { parse } from 'csv-parse/sync';
import { afterAll, expect, test } from 'vitest';
import { ensureJournalTool } from '../../../scripts/ensure-journal-tool.ts';
import { removeFolder, temporaryFolder } from '../../../scripts/temporary-folder.ts';
import { goTo } from '../demo.ts';
import type { Browser } from '../drivers/browser.ts';

/** A Monday of the bookkeeper: an invoice with mistakes is matched and booked, a folder looked at, the month closed and taken out. */
export function booksOnMonday(browser: Browser): void {
  const folder = temporaryFolder();
  afterAll(() => removeFolder(folder));

  const screen = () => browser.pageAt('options-page/index.html');

  test('an invoice is held against the folders: the wrong fee is pointed at, bad rows cost no good ones, and only ticked lines are booked', async () => {
    const page = await screen();
    const venue = await venueWithWaiting();
    await goTo(page, '#/books/invoices');
    await page.choose({ field: 'Venue' }, venue);
    await page.click({ button: 'Try a made-up invoice' });
    await page.click({ button: 'Preview rows' });
    await page.sees('$25 more than the fee schedule');
    await page.sees('Same as row');
    await page.sees('“see note” is not an amount');
    await page.sees('No match: 1 car');
    const ticked = await page.count('.invoice-lines input:checked');
    expect(ticked).toBeGreaterThan(1);
    expect(await page.count('.invoice-lines input:not(:checked)')).toBeGreaterThan(2);
    await page.click({ button: `Record ${ticked} checked lines` });
    await page.sees(`${ticked} lines recorded`);
  });

  test('a folder shows expected beside actual, takes a bill and gives it back', async () => {
    const page = await screen();
    await goTo(page, '#/books');
    await page.until(() => document.querySelectorAll('.sort-table tbody tr').length > 3);
    await page.choose({ field: 'Show' }, 'In stock');
    await page.run(() => document.querySelector<HTMLAnchorElement>('.sort-table tbody a')?.click());
    await page.sees('Expected vs. actual');
    await page.run(() => document.querySelector<HTMLElement>('.books-forms summary')?.click());
    await page.fill({ field: 'Description' }, 'Windshield chip');
    await page.fill({ field: 'Amount' }, '85.50');
    await page.press('Enter');
    await page.click({ button: 'Record the bill' });
    await page.until(() => document.querySelector('.folder-lines')?.textContent?.includes('$85.50'));
    await page.sees('Not expected:');
    await page.click({ button: 'Undo' });
    await page.until(() => !document.querySelector('.folder-lines')?.textContent?.includes('$85.50'));
  });

  test('a month closes, a later bill shows as a correction in the next, and the files out are what a reader and a journal program take', async () => {
    const page = await screen();
    // The browser is in the store's zone; on the first of a month there is hardly more in it than a correction.
    const month = await page.run(() => {
      const now = new Date();
      return `${now.getFullYear()}-${String(now.getMonth() + 1).padStart(2, '0')}`;
    });
    await goTo(page, `#/books/month/${month}`);
    await page.sees('All accounts');
    const total = await page.text('main tr.total');
    expect(total).toMatch(/\$0\.00.*\$0\.00$/);

    const csv = await page.download(() => page.click({ button: 'Postings, as CSV' }));
    const rows: Record<string, string>[] = parse(csv.text, { bom: true, columns: true });
    const sum = (heading: string) => rows.reduce((all, row) => all + Math.round(Number(row[heading] || 0) * 100), 0);
    expect(rows.length).toBeGreaterThan(1);
    expect(sum('Debit')).toBe(sum('Credit'));

    const journal = await page.download(() => page.click({ button: 'Journal for ledger and hledger' }));
    const file = path.join(folder, journal.name);
    writeFileSync(file, journal.text);
    execFileSync(ensureJournalTool('hledger'), ['-f', file, 'check', '--strict']);
    const inventory = execFileSync(
      ensureJournalTool('hledger'),
      ['-f', file, 'balance', 'Assets:Inventory:Vehicles', '-O', 'csv', '--no-total'],
      { encoding: 'utf8' },
    );
    const figure = /\$-?[\d.]+/.exec(inventory)?.[0] ?? '';
    const shown = await page.run(
      () =>
        [...document.querySelectorAll('main tr')].find((row) => row.textContent?.includes('Assets:Inventory:Vehicles'))
          ?.lastElementChild?.textContent ?? '',
    );
    expect(shown.replaceAll(',', '')).toBe(figure);

    // In the middle of a month, and with things open, each has to be said first.
    for (const words of ['Close it before it ends', 'Close it with '])
      await page.run((start) => {
        const labels = [...document.querySelectorAll<HTMLElement>('section[aria-labelledby="close-month"] label')];
        labels.find((each) => each.textContent?.startsWith(start))?.click();
      }, words);
    await page.until(
      () => document.querySelector('section[aria-labelledby="close-month"] button.main:enabled') !== null,
    );
    await page.run(() =>
      document.querySelector<HTMLButtonElement>('section[aria-labelledby="close-month"] button.main')?.click(),
    );
    await page.sees('Its figures are locked');
    await page.click({ button: 'Undo' });
    await page.sees('entries so far');
  });

  /** The venue of the demo that has a won car without an invoice. */
  async function venueWithWaiting(): Promise<string> {
    const page = await screen();
    await goTo(page, '#/books');
    await page.until(() => document.querySelectorAll('.sort-table tbody tr').length > 3);
    return page.run(() => {
      const row = [...document.querySelectorAll('.sort-table tbody tr')].find((each) =>
        each.textContent?.includes('Auction invoice'),
      );
      return row?.querySelector('td .block')?.textContent ?? '';
    });
  }
}
