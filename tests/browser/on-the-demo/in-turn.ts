import { beforeAll, describe } from 'vitest';
import { goTo, openDemo } from '../demo.ts';
import type { Browser } from '../drivers/browser.ts';
import { useBrowser } from '../drivers/use-browser.ts';

/**
 * Opens a browser with the demo in it once for several parts: starting both takes longer than most of the parts. Each part
 * begins at the list, in a window at a desk, with what the parts before it did to the demo.
 */
export function onOneDemo(parts: Readonly<Record<string, (browser: Browser) => void>>): void {
  const browser = useBrowser('America/Boise');
  beforeAll(async () => {
    await openDemo(browser);
  });
  for (const [name, tests] of Object.entries(parts))
    describe(name, () => {
      beforeAll(async () => {
        const page = await browser.pageAt('options-page/index.html');
        await page.showAs({});
        await page.resize(1280, 800);
        await goTo(page, '#/lots');
        await page.until(() => document.querySelectorAll('.lot-row').length > 3);
      });
      tests(browser);
    });
}
