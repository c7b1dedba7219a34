import { goTo } from './demo.ts';
import type { Page } from './drivers/browser.ts';

/** Goes to a screen and on by its links, and waits until it has what it shows. */
export async function visit(page: Page, hash: string, follow: readonly string[]): Promise<void> {
  await goTo(page, hash);
  for (const link of follow) {
    await goTo(page, await page.until((css) => document.querySelector<HTMLAnchorElement>(css)?.hash, link));
  }
  // The heading of the screen before stands for a frame or two; it is not the one to wait for.
  await new Promise((resolve) => setTimeout(resolve, 100));
  await page.until(() => document.querySelector('main h1') && !document.querySelector('main [aria-busy="true"]'));
}
