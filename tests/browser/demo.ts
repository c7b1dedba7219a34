import type { Browser, Page } from './drivers/browser.ts';

const PAGE = 'options-page/index.html';

/** Opens the companion page with the invented dealer's week in it, at the watchlist. */
export async function openDemo(browser: Browser): Promise<Page> {
  const page = await browser.open(`${PAGE}#/demo-load`);
  await page.until(() => document.querySelectorAll('.lot-row').length > 3);
  return page;
}

/** Goes to another screen of the companion page without loading it anew. */
export async function goTo(page: Page, hash: string): Promise<void> {
  await page.run((wanted) => {
    location.hash = wanted;
  }, hash);
}
