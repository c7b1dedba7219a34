import { expect, test } from 'vitest';
import { goTo, openDemo } from './demo.ts';
import { useBrowser } from './drivers/use-browser.ts';

const browser = useBrowser();

test('a printed worksheet is black on white, without buttons, inputs or navigation, and keeps its figures', async () => {
  const page = await openDemo(browser);
  const sheet = await page.run(
    () => document.querySelector<HTMLAnchorElement>('.lot-row:has(.lot-figure) .lot-name')?.hash ?? '',
  );
  await goTo(page, sheet);
  await page.until(() => document.querySelector('.stairs'));
  // On the screen the steps of a flight are folded away: one row each, and the two landings.
  const folded = await page.count('.stair-flight:not([open])');
  expect(folded).toBeGreaterThan(1);
  const rows = await page.count('.stair');
  await page.showAs({ print: true, dark: true });
  await page.until((many) => document.querySelectorAll('.stair-flight[open]').length === many, folded);
  const printed = await page.run(() => ({
    paper: getComputedStyle(document.documentElement).backgroundColor,
    ink: getComputedStyle(document.documentElement).color,
    controls: [...document.querySelectorAll<HTMLElement>('nav, button, input, select, textarea')].filter(
      (element) => element.getClientRects().length > 0,
    ).length,
    steps: [...document.querySelectorAll('.stair')].filter((row) => row.getClientRects().length > 0).length,
    lines: [...document.querySelectorAll('.stair-of')].map((count) => Number.parseInt(count.textContent ?? '', 10)),
    narrowest: Math.min(
      ...[...document.querySelectorAll('.fold > summary > h2')].map((head) => head.getBoundingClientRect().width),
    ),
  }));
  expect(printed).toMatchObject({ paper: 'rgb(255, 255, 255)', ink: 'rgb(0, 0, 0)', controls: 0 });
  // Every line of every flight is on paper, each flight having said how many it has.
  expect(printed.lines.length).toBe(folded);
  expect(printed.steps).toBe(rows + printed.lines.reduce((sum, many) => sum + many, 0));
  await page.showAs({});
  await page.until((many) => document.querySelectorAll('.stair-flight:not([open])').length === many, folded);
  // A heading in a column of its own sign's width would stand letter under letter.
  expect(printed.narrowest).toBeGreaterThan(60);
});

test('the printed list holds every lot that is shown, not only those in sight', async () => {
  const page = await browser.pageAt('options-page/index.html');
  await page.showAs({});
  await goTo(page, '#/lots');
  const shown = await page.until(() => Number(document.querySelector('.list-count')?.textContent?.split(' of ')[0]));
  expect(await page.count('.lot-row')).toBeLessThan(shown);
  await page.showAs({ print: true });
  await page.until(() => document.querySelector('.printed-list'));
  expect(await page.count('.printed-list tbody tr')).toBe(shown);
  await page.showAs({});
  await page.until(() => document.querySelector('.lot-row'));
});
