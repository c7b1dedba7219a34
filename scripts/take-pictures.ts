import { mkdir } from 'node:fs/promises';
import path from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { TEST_CHROMIUM_ID } from '../manifest/test-identity.ts';
import { instant } from '../src/domain/time/instant.ts';
import { DEMO_VIEWS, type DemoScreen, demoScreens, NARROW } from './demo-screens.ts';

const ORIGIN = `chrome-extension://${TEST_CHROMIUM_ID}/`;

/** Opens the companion page, loads the demo scenario unless there are lots already, and waits for the watchlist. */
export async function openDemo(context: BrowserContext): Promise<Page> {
  const page = context.pages()[0] ?? (await context.newPage());
  // The pictures of before may have ended on paper, where a list has no links.
  await page.emulateMedia({ media: 'screen' });
  await page.goto(`${ORIGIN}options-page/index.html#/demo-load`);
  // Where the demo finds something already there it says so, and the list is one step away.
  const first = await page.waitForSelector('a[href^="#/lot/"], main a[href="#/lots"]', { timeout: 60_000 });
  if ((await first.getAttribute('href')) === '#/lots') {
    await first.click();
    await page.waitForSelector('a[href^="#/lot/"]', { timeout: 60_000 });
  }
  return page;
}

/** Writes a picture of every screen in every view into `folder`; gives back what the pages complained of meanwhile. */
export async function takePictures(context: BrowserContext, folder: string): Promise<readonly string[]> {
  await mkdir(folder, { recursive: true });
  const complaints: string[] = [];
  context.on('weberror', (failure) => complaints.push(String(failure.error())));
  context.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  const first = context.pages()[0] ?? (await context.newPage());
  const screens = demoScreens(instant(Date.now()));
  for (const screen of screens.filter(({ empty }) => empty)) await takeViews(first, screen, folder);
  const page = await openDemo(context);
  await sayWhoUsesIt(page);
  for (const screen of screens.filter(({ empty }) => !empty)) await takeViews(page, screen, folder);
  return complaints;
}

/** It is asked once in a browser, above every screen. */
async function sayWhoUsesIt(page: Page): Promise<void> {
  await page.fill('.who-asks input', 'buyer');
  await page.click('.who-asks button');
  await page.waitForSelector('.who-asks', { state: 'detached' });
}

async function takeViews(
  page: Page,
  { name, address, narrow, open, follow }: DemoScreen,
  folder: string,
): Promise<void> {
  // A new document for each, so that no screen's picture depends on the one before.
  await page.goto('about:blank');
  await page.goto(ORIGIN + address);
  // The screen before was left as it prints, which hides what only serves on a screen.
  await page.emulateMedia({ media: 'screen' });
  for (const link of follow) {
    const from = page.url();
    await page.click(link);
    await page.waitForFunction((before) => location.href !== before, from);
  }
  if (open !== undefined) await openAll(page, open);
  for (const view of DEMO_VIEWS.filter(({ width }) => !narrow || width <= NARROW)) {
    await page.setViewportSize({ width: view.width, height: view.height });
    await page.emulateMedia({ colorScheme: view.dark ? 'dark' : 'light', media: view.print ? 'print' : 'screen' });
    await settle(page);
    await page.screenshot({ path: path.join(folder, `${name}-${view.name}.png`), fullPage: true });
  }
}

/** Opens what the page keeps folded. */
async function openAll(page: Page, css: string): Promise<void> {
  await page.waitForSelector(css);
  await page.evaluate((folded) => {
    for (const part of document.querySelectorAll<HTMLDetailsElement>(folded)) part.open = true;
  }, css);
}

/** Waits until the page has its data and its font, and has been drawn anew. */
async function settle(page: Page): Promise<void> {
  await page.waitForLoadState('networkidle');
  // What is still opening or loading says so in a status or is marked as busy.
  await page.waitForFunction(
    () => document.querySelector('#opening, .popup-opening, [aria-busy="true"], main > [role="status"]') === null,
  );
  await page.evaluate(async () => {
    await document.fonts.ready;
    await new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve)));
  });
}
