import type { Browser, Page } from './drivers/browser.ts';

const PAGE = 'options-page/index.html';

/** Opens the companion page with the invented dealer's week in it, at the watchlist. */
export async function openDemo(browser: Browser): Promise<Page> {
  const page = await browser.open(`${PAGE}#/demo-load`);
  await page.until(() => document.querySelectorAll('.lot-row').length > 3);
  // The demo comes in through a connection of its own, and the page hears of it in parts: until it has all of them.
  let before = '';
  for (;;) {
    await new Promise((resolve) => setTimeout(resolve, 700));
    const count = await page.run(() => document.querySelector('.list-count')?.textContent ?? '');
    if (count === before) return page;
    before = count;
  }
}

/** Goes to another screen of the companion page without loading it anew. */
export async function goTo(page: Page, hash: string): Promise<void> {
  await page.run((wanted) => {
    location.hash = wanted;
  }, hash);
}
