import type { Browser, Page, Popup, Surface } from './drivers/browser.ts';

/** Opens a page and has it read through the toolbar button, as a user does. */
export async function readByHand(browser: Browser, url: string): Promise<{ page: Page; popup: Popup }> {
  const page = await browser.open(url);
  return { page, popup: await readAgain(browser, page) };
}

/** Has a page that is open read through the toolbar button. */
export async function readAgain(browser: Browser, page: Page): Promise<Popup> {
  const popup = await browser.clickToolbarButton(page);
  await popup.click({ button: 'Read this page' });
  await whenRead(popup);
  return popup;
}

/** Waits until the popup shows what it has read, or why it has not. */
export async function whenRead(popup: Popup): Promise<void> {
  await popup.until(() => document.querySelector('.page-lot, .note.warning'));
}

/** What the popup shows of each field: its words, and where they came from. */
export const rowsOf = (popup: Surface): Promise<Record<string, string>> =>
  popup.run(() =>
    Object.fromEntries(
      [...document.querySelectorAll('.draft-row')].map((row) => [
        row.querySelector('.draft-label')?.textContent ?? '',
        [row.querySelector('.draft-value'), row.querySelector('.draft-origin')]
          .map((part) => part?.textContent ?? '')
          .join(' | '),
      ]),
    ),
  );
