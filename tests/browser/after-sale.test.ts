import { expect, test } from 'vitest';
import { goTo, openDemo } from './demo.ts';
import type { Page } from './drivers/browser.ts';
import { useBrowser } from './drivers/use-browser.ts';

const browser = useBrowser('America/Boise');

const owed = (page: Page) => page.text('.money-open .figure');

test('a payment is noted with one tap, lowers what is promised, and is undone with Undo', async () => {
  const page = await openDemo(browser);
  await goTo(page, '#/todo');
  await page.until(() => document.querySelector('.todo-row'));
  const before = await owed(page);
  await page.run(() => {
    const tap = [...document.querySelectorAll<HTMLButtonElement>('.todo-act button')].find((each) =>
      each.textContent?.startsWith('Paid $'),
    );
    tap?.focus();
  });
  await page.press('Enter');
  await page.until((old) => document.querySelector('.money-open .figure')?.textContent !== old, before);
  await page.click({ button: 'Undo' });
  await page.until((old) => document.querySelector('.money-open .figure')?.textContent === old, before);
});

test('a sale is disputed, a paper attached, the sale canceled with a refund due, and that undone again', async () => {
  const page = await browser.pageAt('options-page/index.html');
  // The car that is still to be paid has no dispute yet.
  const won = await page.run(() => {
    const rows = [...document.querySelectorAll<HTMLElement>('.todo-row')];
    const row = rows.find((each) => each.querySelector('button')?.textContent?.startsWith('Paid $'));
    return row?.querySelector<HTMLAnchorElement>('a[href^="#/won/"]')?.hash ?? '';
  });
  await goTo(page, won);
  await page.click({ link: 'Open a dispute' });
  await page.until(() => document.querySelector('.dispute-form'));
  await page.click({ button: 'Open the dispute' });
  await page.sees('Enter what happened.');
  await page.fill({ field: 'What happened' }, 'The frame is bent behind the cab.');
  await page.fill({ field: 'Amount claimed' }, '1,900');
  await page.click({ button: 'Open the dispute' });
  await page.until(() => document.querySelector('.dispute-time'));
  await page.sees('The frame is bent behind the cab.');
  const missing = await page.count('.need-row');

  await attach(page, 'frame.png');
  await page.until((n) => document.querySelectorAll('.need-row').length === n - 1, missing);
  await page.click({ button: 'Show frame.png' });
  await page.until(() => document.querySelector<HTMLImageElement>('.kept-picture')?.naturalWidth === 1);

  await page.click({ button: 'Claim filed' });
  await page.sees('Waiting for their answer.');
  await page.choose({ field: 'Outcome' }, 'Sale canceled');
  await page.click({ button: 'Close the dispute' });
  await page.sees('Reopen');
  await goTo(page, won);
  await page.sees('The sale was canceled.');
  const steps = await page.count('.won-step button');

  await page.click({ link: 'Undisclosed defect' });
  await page.click({ button: 'Reopen' });
  await page.sees('Close the dispute');
  await goTo(page, won);
  await page.sees('Not final yet.');
  expect(await page.count('.won-step button')).toBeGreaterThan(steps);
});

test('the list of disputes has the new one, in every tab, and finds it by its words', async () => {
  const other = await browser.open('options-page/index.html#/disputes');
  await other.until(() => document.querySelectorAll('.dispute-row').length >= 3);
  await other.fill({ field: 'Search the disputes' }, 'frame bent');
  await other.until(() => document.querySelectorAll('.dispute-row').length === 1);
  await other.sees('$1,900');
  await other.close();
});

/** Chooses a file for the first thing that is missing, as the browser's own box would: one dot, black. */
function attach(page: Page, name: string): Promise<void> {
  return page.run((file) => {
    const dot = 'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg==';
    const bytes = Uint8Array.from(atob(dot), (letter) => letter.charCodeAt(0));
    const box = document.querySelector<HTMLInputElement>('.need-row input[type="file"]');
    const picked = new DataTransfer();
    picked.items.add(new File([bytes], file, { type: 'image/png' }));
    if (box === null) throw new Error('no box for files');
    box.files = picked.files;
    box.dispatchEvent(new Event('change', { bubbles: true }));
  }, name);
}
