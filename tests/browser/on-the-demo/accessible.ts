import { expect, test } from 'vitest';
import { screenVisits } from '../../../scripts/screen-visits.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { DAY } from '../../../src/domain/time/units.ts';
import { AXE, violations } from '../axe.ts';
import { goTo } from '../demo.ts';
import type { Browser } from '../drivers/browser.ts';
import { waitUntil } from '../drivers/wait-until.ts';
import { smallTargets } from '../small-targets.ts';
import { visit } from '../visit.ts';

/** What can be seen, read and reached on every screen of the demo. */
export function accessible(browser: Browser): void {
  /**
   * The rules are the same program in both browsers, so each of them has one of the two looks judged; folds are open, and the
   * size of targets and what scrolls is measured in both.
   */
  const JUDGED = {
    chromium: { width: 1280, dark: false, widths: [1280, 1000, 640, 400] },
    firefox: { width: 400, dark: true, widths: [640, 400] },
  } as const;

  /**
   * Each screen is judged in one of the browsers, and the next day in the other, because axe takes half of what this test does;
   * with `EVERY_LOOK=1` all of them are judged in both.
   */
  const isJudged = (at: number): boolean =>
    process.env.EVERY_LOOK !== undefined ||
    (at + Math.floor(Date.now() / DAY) + (browser.name === 'chromium' ? 0 : 1)) % 2 === 0;

  /** Each of which a slow machine does within a test's time. */
  const THIRDS = ['first', 'second', 'third'] as const;

  test.each(THIRDS)(
    'axe finds nothing on the %s third of all screens, light or dark, wide or narrow',
    async (third) => {
      const page = await browser.pageAt('options-page/index.html');
      if (third === 'first') await page.addProgram(AXE);
      const judged = JUDGED[browser.name];
      const visits = screenVisits(instant(Date.now()));
      const begins = THIRDS.indexOf(third);
      for (const [at, { name, hash, follow }] of visits.entries()) {
        if (Math.floor((at * THIRDS.length) / visits.length) !== begins) continue;
        await visit(page, hash, follow);
        await page.run(() => {
          for (const fold of document.querySelectorAll<HTMLDetailsElement>('main details')) fold.open = true;
        });
        // 640 pixels is a window of 1280 at 200% (WCAG 2.2, 1.4.4).
        for (const width of judged.widths) {
          await page.resize(width, 800);
          // The list has cards of its own on a narrow screen, which come a frame after it has become narrow.
          await waitUntil(`${name} not to scroll sideways at ${width} px`, () =>
            page.run(() => document.documentElement.scrollWidth <= innerWidth),
          );
          if (width === 400) expect.soft(await page.run(smallTargets), `targets of ${name}`).toEqual([]);
          if (width !== judged.width || !isJudged(at)) continue;
          await page.showAs({ dark: judged.dark });
          expect.soft(await violations(page), `${name} at ${width} px, ${judged.dark ? 'dark' : 'light'}`).toEqual([]);
        }
      }
    },
  );

  test('what waits is counted beside its screen, and nothing moves when the count comes', async () => {
    const page = await browser.pageAt('options-page/index.html');
    await goTo(page, '#/lots');
    await page.until(() => document.querySelector('.frame-count'));
    for (const width of [1280, 400]) {
      await page.resize(width, 800);
      const [counted, bare] = await page.run(() => {
        const nav = document.querySelector('nav[aria-label="Screens"]');
        const places = () =>
          [...(nav?.querySelectorAll('a, button') ?? [])].map((place) => place.getBoundingClientRect());
        const counts = [...(nav?.querySelectorAll<HTMLElement>(':is(a, button) > span') ?? [])];
        const first = JSON.stringify(places());
        for (const count of counts) count.hidden = true;
        const second = JSON.stringify(places());
        for (const count of counts) count.hidden = false;
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

  test('on a narrow screen the groups stand in one line, and two presses by keyboard lead to any screen', async () => {
    const page = await browser.pageAt('options-page/index.html');
    await goTo(page, '#/lots');
    for (const width of [640, 400, 320]) {
      await page.resize(width, 800);
      const head = await page.run(() => ({
        high: document.querySelector<HTMLElement>('.frame-head')?.offsetHeight,
        aside: document.documentElement.scrollWidth - innerWidth,
        shown: [...document.querySelectorAll('.frame-nav a')].filter((link) => link.checkVisibility()).length,
      }));
      expect(head, `${width} px`).toEqual({ high: 53, aside: 0, shown: 0 });
    }
    // The first thing that the keyboard reaches leads past all of them.
    await page.run(() => (document.activeElement as HTMLElement | null)?.blur());
    await page.run(() => document.querySelector<HTMLElement>('.skip-link')?.focus());
    expect(
      await page.run(() => document.querySelector('.skip-link')?.getBoundingClientRect().top),
    ).toBeGreaterThanOrEqual(0);
    expect(await page.run(() => document.querySelector('a, button, input')?.className)).toContain('skip-link');
    await page.press('Enter');
    expect(await page.run(() => document.activeElement?.id)).toBe('main');
    const focused = () => page.run(() => (document.activeElement as HTMLElement | null)?.textContent);
    await page.run(() => document.querySelectorAll<HTMLElement>('.frame-opener')[1]?.focus());
    await page.press('Enter');
    await page.until(() => document.querySelector('.frame-opener[aria-expanded="true"]'));
    await page.press('Tab');
    expect(await focused()).toMatch(/^Results/);
    // Escape goes back to what opened it, and the keyboard closes it when it leaves.
    await page.press('Escape');
    expect(await focused()).toMatch(/^After sale/);
    expect(await page.count('.frame-nav a')).toBe(0);
    await page.press('Enter');
    await page.press('Tab');
    await page.press('Tab');
    await page.press('Enter');
    await page.until(() => document.querySelector('main h1')?.textContent === 'To do');
    expect(await page.count('.frame-nav a')).toBe(0);
    expect(await page.run(() => document.title)).toMatch(/^To do · /);
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
}
