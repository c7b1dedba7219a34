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
  await page.showAs({ print: true, dark: true });
  const printed = await page.run(() => ({
    paper: getComputedStyle(document.documentElement).backgroundColor,
    ink: getComputedStyle(document.documentElement).color,
    controls: [...document.querySelectorAll<HTMLElement>('nav, button, input, select, textarea')].filter(
      (element) => element.getClientRects().length > 0,
    ).length,
    steps: document.querySelectorAll('.stair').length,
  }));
  expect(printed).toMatchObject({ paper: 'rgb(255, 255, 255)', ink: 'rgb(0, 0, 0)', controls: 0 });
  expect(printed.steps).toBeGreaterThan(5);
});
