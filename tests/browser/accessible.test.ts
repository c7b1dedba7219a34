import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { expect, test } from 'vitest';
import { goTo, openDemo } from './demo.ts';
import type { Surface } from './drivers/browser.ts';
import { useBrowser } from './drivers/use-browser.ts';

const browser = useBrowser();
const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const SCREENS = [
  '#/lots',
  '#/add',
  '#/backup',
  '#/setup/store',
  '#/setup/venues',
  '#/setup/fees',
  '#/setup/rules',
  '#/setup/costs',
  '#/setup/holding',
  '#/setup/titles',
  '#/setup/busy',
  '#/setup/alerts',
  '#/setup/estimating',
  '#/setup/file',
];

/** What axe finds against WCAG 2.2 A and AA, each with where. */
function violations(surface: Surface): Promise<string[]> {
  return surface.run(async () => {
    const { axe } = globalThis as unknown as {
      axe: { run: (options: object) => Promise<{ violations: { id: string; nodes: { target: string[] }[] }[] }> };
    };
    const found = await axe.run({ runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] });
    return found.violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`);
  });
}

test('axe finds nothing on any screen, light or dark, wide or narrow', async () => {
  const page = await openDemo(browser);
  await page.addProgram(AXE);
  const sheet = await page.run(
    () => document.querySelector<HTMLAnchorElement>('.lot-row:has(.lot-figure) .lot-name')?.hash ?? '',
  );
  for (const hash of [...SCREENS, sheet]) {
    await goTo(page, hash);
    await page.until(() => document.querySelector('main h1'));
    for (const [width, dark] of [
      [1280, false],
      [400, true],
    ] as const) {
      await page.resize(width, 800);
      await page.showAs({ dark });
      expect(await violations(page), `${hash} at ${width} px, ${dark ? 'dark' : 'light'}`).toEqual([]);
      const sideways = await page.run(() => document.documentElement.scrollWidth - innerWidth);
      expect(sideways, `${hash} scrolls sideways at ${width} px`).toBeLessThanOrEqual(0);
    }
  }
});

test('the list is walked, searched and opened by keyboard alone', async () => {
  const page = await browser.pageAt('options-page/index.html');
  await page.resize(1280, 800);
  await goTo(page, '#/lots');
  await page.until(() => document.querySelector('.lot-row'));
  await page.run(() => (document.activeElement as HTMLElement | null)?.blur());
  await page.press('j');
  await page.press('j');
  expect(await page.run(() => (document.activeElement as HTMLElement | null)?.dataset.row)).toBe('1');
  await page.press('k');
  await page.press('Enter');
  await page.until(() => document.querySelector('.worksheet'));
  await goTo(page, '#/lots');
  await page.until(() => document.querySelector('.lot-row'));
  await page.press('/');
  expect(await page.run(() => document.activeElement?.getAttribute('type'))).toBe('search');
});

test('axe finds nothing in the popup', async () => {
  const popup = await browser.open('popup/popup.html');
  await popup.until(() => document.querySelector('.popup-lot'));
  await popup.addProgram(AXE);
  expect(await violations(popup)).toEqual([]);
});
