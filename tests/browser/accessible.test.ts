import { expect, test } from 'vitest';
import { comingSaturday } from '../../src/demo/demo-closes.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { AXE, violations } from './axe.ts';
import { goTo, openDemo } from './demo.ts';
import { useBrowser } from './drivers/use-browser.ts';
import { waitUntil } from './drivers/wait-until.ts';

const browser = useBrowser();
const SCREENS = [
  '#/lots',
  '#/week',
  `#/week/${comingSaturday(instant(Date.now()))}`,
  '#/results',
  '#/results/missing',
  '#/now',
  '#/plan',
  '#/add',
  '#/books',
  '#/books/monday',
  '#/books/invoices',
  '#/books/payables',
  '#/books/share',
  '#/books/sold',
  '#/books/month',
  '#/books/review',
  '#/learn',
  '#/learn/money',
  '#/learn/misses',
  '#/learn/groups',
  '#/backup',
  '#/todo',
  '#/learn/corrections',
  '#/disputes',
  '#/open-dispute',
  '#/setup/after',
  '#/setup/store',
  '#/setup/venues',
  '#/setup/fees',
  '#/setup/rules',
  '#/setup/costs',
  '#/setup/recon',
  '#/setup/holding',
  '#/setup/titles',
  '#/setup/busy',
  '#/setup/alerts',
  '#/setup/estimating',
  '#/setup/sites',
  '#/setup/accounts',
  '#/setup/file',
  '#/words',
  '#/words/max-bid',
];

/** Screens of which only the demo knows the address: where a link leads on to them, and its CSS. */
const LEADING = [
  ['#/todo', 'main a[href^="#/won/"]'],
  ['#/disputes', 'main a[href^="#/dispute/"]'],
  ['#/books', 'main a[href^="#/books/0"]'],
] as const;

/** The rules are the same program in both browsers, so each of them has one of the two looks judged. */
const JUDGED = { chromium: { width: 1280, dark: false }, firefox: { width: 400, dark: true } } as const;

test('axe finds nothing on any screen, light or dark, wide or narrow', async () => {
  const page = await openDemo(browser);
  await page.addProgram(AXE);
  const sheet = await page.run(
    () => document.querySelector<HTMLAnchorElement>('.lot-row:has(.lot-figure) .lot-name')?.hash ?? '',
  );
  const led: string[] = [];
  for (const [from, link] of LEADING) {
    await goTo(page, from);
    led.push(await page.until((css) => document.querySelector<HTMLAnchorElement>(css)?.hash, link));
  }
  for (const hash of [...SCREENS, ...led, sheet, sheet.replace('lot', 'history')]) {
    await goTo(page, hash);
    // The heading of the screen before stands for a frame or two; it is not the one to wait for.
    await new Promise((resolve) => setTimeout(resolve, 100));
    await page.until(() => document.querySelector('main h1'));
    const judged = JUDGED[browser.name];
    for (const width of [1280, 400]) {
      await page.resize(width, 800);
      // The list has cards of its own on a narrow screen, which come a frame after it has become narrow.
      await waitUntil(`${hash} not to scroll sideways at ${width} px`, () =>
        page.run(() => document.documentElement.scrollWidth <= innerWidth),
      );
      if (width !== judged.width) continue;
      await page.showAs({ dark: judged.dark });
      expect(await violations(page), `${hash} at ${width} px, ${judged.dark ? 'dark' : 'light'}`).toEqual([]);
    }
  }
});

test('what waits is counted beside its screen, and nothing moves when the count comes', async () => {
  const page = await browser.pageAt('options-page/index.html');
  await goTo(page, '#/lots');
  await page.until(() => document.querySelector('.frame-count'));
  for (const width of [1280, 400]) {
    await page.resize(width, 800);
    const [counted, bare] = await page.run(() => {
      const nav = document.querySelector('nav[aria-label="Screens"]');
      const places = () => [...(nav?.querySelectorAll('a') ?? [])].map((link) => link.getBoundingClientRect());
      const first = JSON.stringify(places());
      for (const count of nav?.querySelectorAll<HTMLElement>('a span') ?? []) count.hidden = true;
      const second = JSON.stringify(places());
      for (const count of nav?.querySelectorAll<HTMLElement>('a span') ?? []) count.hidden = false;
      return [first, second];
    });
    expect(counted, `${width} px`).toBe(bare);
    // In one line: a figure set letter by letter, one below the other, would still move nothing.
    const lines = await page.run(() =>
      [...document.querySelectorAll<HTMLElement>('.frame-count')].map((each) => each.offsetHeight <= 14),
    );
    expect(lines).not.toContain(false);
  }
});

test('the list is walked, searched and opened by keyboard alone', async () => {
  const page = await browser.pageAt('options-page/index.html');
  await page.resize(1280, 800);
  await goTo(page, '#/lots');
  await page.until(() => document.querySelector('.lot-row'));
  await page.run(() => (document.activeElement as HTMLElement | null)?.blur());
  await page.press('ArrowDown');
  await page.press('ArrowDown');
  expect(await page.run(() => document.activeElement?.closest<HTMLElement>('[data-row]')?.dataset.row)).toBe('1');
  await page.press('ArrowUp');
  await page.press('Enter');
  await page.until(() => document.querySelector('.worksheet'));
  await goTo(page, '#/lots');
  await page.until(() => document.querySelector('.lot-row'));
  await page.press('End');
  await page.until(() => {
    const row = document.activeElement?.closest<HTMLElement>('[data-row]')?.dataset.row;
    return row !== undefined && Number(row) + 2 === Number(document.querySelector('.lot-table')?.ariaRowCount);
  });
  await page.press('Home');
  await page.until(() => document.activeElement?.closest<HTMLElement>('[data-row]')?.dataset.row === '0');
  await page.press('s');
  expect(await page.run(() => document.activeElement?.getAttribute('type'))).toBe('search');
});

test('axe finds nothing in the popup', async () => {
  const popup = await browser.open('popup/popup.html');
  await popup.until(() => document.querySelector('.popup-lot'));
  await popup.addProgram(AXE);
  expect(await violations(popup)).toEqual([]);
  // Its list scrolls by itself; the popup round it must not.
  expect(await popup.run(() => document.documentElement.scrollHeight - innerHeight)).toBeLessThanOrEqual(0);
});
