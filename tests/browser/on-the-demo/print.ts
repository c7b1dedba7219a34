import path from 'node:path';
import { expect, test } from 'vitest';
import { pagesOfPdf } from '../../../scripts/ensure-pdf-reader.ts';
import { screenVisits } from '../../../scripts/screen-visits.ts';
import { removeFolder, temporaryFolder } from '../../../scripts/temporary-folder.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { goTo } from '../demo.ts';
import type { Browser } from '../drivers/browser.ts';
import { ChromiumPage } from '../drivers/chromium-page.ts';
import { visit } from '../visit.ts';

/** What the screens of the demo look like on paper, and where the system forces its colors. */
export function onPaper(browser: Browser): void {
  test('a printed worksheet is black on white, without buttons, inputs or navigation, and keeps its figures', async () => {
    const page = await browser.pageAt('options-page/index.html');
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

  /** What is printed now and then. Setup and Words are looked up, and a form is filled in, on the screen. */
  const PAPER =
    process.env.PAPER === 'all'
      ? /^(?:lots|day|week|now|plan|results|todo|won|dispute|history|worksheet|books|learn)/
      : /^(?:day|week|plan|dispute|worksheet|books-month|books-payables|books-monday)$/;
  /** Sheets that are about one car, day or month, which stands in their heading and has to stand on each page. */
  const ABOUT_ONE = /^(?:worksheet|history|won|day|week|books-folder|books-month)$/;
  /** Once on the paper that the rest of the world has. */
  const ON_A4 = 'books-month';
  /** The least that is worth a last sheet: heads, foot, and a few lines. */
  const LEAST_LINES = 8;

  test('every page on paper is titled with store and date, holds nothing to press, and the last one is worth its sheet', async () => {
    const page = await browser.pageAt('options-page/index.html');
    // Only Chromium hands a driver the file; what is left out on paper is looked at in both.
    const printed = page instanceof ChromiumPage ? PAPER : /^(?:now|results|books-payables)$/;
    const folder = temporaryFolder();
    const date = await page.run(() => document.querySelector('.clock-day')?.textContent?.replace(/, $/, '') ?? '');
    for (const { name, hash, follow } of screenVisits(instant(Date.now())).filter((one) => printed.test(one.name))) {
      await page.showAs({});
      await visit(page, hash, follow);
      await page.showAs({ print: true });
      const left = await page.run(() =>
        [...document.querySelectorAll<HTMLElement>('button, .button, input, select, textarea, nav a')]
          .filter((each) => each.getClientRects().length > 0)
          .filter((each) => {
            const { backgroundColor, borderTopColor, borderTopWidth } = getComputedStyle(each);
            const bare = /, 0\)$/.test(backgroundColor) && (borderTopWidth === '0px' || /, 0\)$/.test(borderTopColor));
            return !bare || (each.matches('button') && !each.matches('.in-print'));
          })
          .map((each) => each.outerHTML.slice(0, 80)),
      );
      expect.soft(left, name).toEqual([]);
      if (!(page instanceof ChromiumPage)) continue;
      const file = path.join(folder, `${name}.pdf`);
      await page.inner.pdf({ path: file, format: name === ON_A4 ? 'A4' : 'Letter', preferCSSPageSize: true });
      const pages = pagesOfPdf(file);
      const heading = await page.run(() => document.querySelector('main h1')?.firstChild?.textContent ?? '');
      expect(pages.length, name).toBeGreaterThan(0);
      for (const [at, lines] of pages.entries()) {
        const where = `${name}, page ${at + 1}`;
        expect(lines[0], where).toMatch(/· Cottonwood Truck & Van/);
        expect(lines[0], where).toContain(date);
        if (ABOUT_ONE.test(name)) expect(lines[0], where).toContain(heading);
        expect(lines.at(-1), where).toContain(`${at + 1} of ${pages.length}`);
      }
      if (pages.length > 1)
        expect
          .soft(pages.at(-1)?.length, `lines on the last page of ${name}: ${pages.at(-1)?.join(' / ')}`)
          .toBeGreaterThan(LEAST_LINES);
    }
    await page.showAs({});
    removeFolder(folder);
  });

  /** What shows a figure or a time and is nothing but its shape. A mark's own words are hidden with it. */
  const SHAPES = {
    '#/lots': ['.stair-bar', '.landing .stair-bar', '.stair-spread', '.worksheet-stop .figure-large'],
    '#/week': ['.time-band', '.time-tick', '.time-mark', '.time-mark.danger'],
  } as const;

  test('where the system forces its colors, the staircase, the week and the number to stop at are seen', async () => {
    const page = await browser.pageAt('options-page/index.html');
    // Only Chromium lets a driver force its colors.
    if (!(page instanceof ChromiumPage)) return;
    await page.resize(1280, 900);
    await page.inner.emulateMedia({ media: 'screen', forcedColors: 'active' });
    for (const [hash, shapes] of Object.entries(SHAPES)) {
      await visit(page, hash, hash === '#/lots' ? ['.lot-row:has(.lot-figure) .lot-name'] : []);
      for (const css of shapes) expect.soft(await isSeen(page, css), `${css} on ${hash}`).toBe(true);
    }
    await page.inner.emulateMedia({ forcedColors: null });
  });

  /** Whether the picture of the screen is another when the shape is not there. */
  async function isSeen(page: ChromiumPage, css: string): Promise<boolean> {
    const shape = page.inner.locator(css).first();
    const clip = await shape.evaluate((element) => {
      element.scrollIntoView({ block: 'center' });
      for (const part of element.children) if (part instanceof HTMLElement) part.style.visibility = 'hidden';
      const { x, y, width, height } = element.getBoundingClientRect();
      return { x: x - 2, y: y - 2, width: width + 4, height: height + 4 };
    });
    const picture = () => page.inner.screenshot({ clip, animations: 'disabled' });
    const shown = await picture();
    await shape.evaluate((element) => ((element as HTMLElement).style.visibility = 'hidden'));
    const hidden = await picture();
    await shape.evaluate((element) => {
      for (const part of [element, ...element.children]) (part as HTMLElement).style.visibility = '';
    });
    return !shown.equals(hidden);
  }
}
