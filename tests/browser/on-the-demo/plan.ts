import { expect, test } from 'vitest';
import { AXE, violations } from '../axe.ts';
import { goTo } from '../demo.ts';
import type { Browser } from '../drivers/browser.ts';

/** The plan of the demo, made anew from a purse. */
export function plan(browser: Browser): void {
  /** Beside the plan that the first test finds. */
  const PLANNED = 60_000;

  test(
    'a purse is counted, every lot gets its planned bid, one is placed, a result comes, and the plan says what changed',
    async () => {
      const page = await browser.pageAt('options-page/index.html');
      await goTo(page, '#/plan');
      await page.click({ button: 'Change the purse' });
      await page.fill({ field: 'Cash for cars' }, '64,000');
      await page.press('Enter');
      await page.sees('Cash for cars: $64,000.');
      await page.fill({ field: 'Allowed chance of overspending' }, '60');
      await page.press('Enter');
      // What can't be is refused with a sentence, and the purse stays as it was.
      await page.sees('At most 25%.');
      await page.press('Escape');
      await page.click({ button: 'Close the purse' });

      // Made in the background, from the purse as it is now.
      const row = await page.until(() => {
        const counted = document.querySelector('.plan-fact')?.textContent?.includes('$64,000 counted');
        const rows = [...document.querySelectorAll<HTMLElement>('.plan-row')];
        const offer = rows.find((one) =>
          /^I (?:placed|raised)/.test(one.querySelector('.plan-says button')?.textContent ?? ''),
        );
        const bid = offer?.querySelector('.plan-figure')?.textContent;
        return counted === true && bid?.startsWith('$') ? { id: offer?.id ?? '', bid } : null;
      });
      expect(row.id).not.toBe('');

      // The same number in the list and on the worksheet.
      const lot = row.id.replace('plan-', '');
      await page.run((id) => document.querySelector<HTMLElement>(`#${id} .plan-says button`)?.click(), row.id);
      await page.until(
        ({ id, bid }) => document.getElementById(id)?.querySelector('.plan-car')?.textContent?.includes(bid),
        row,
      );
      await goTo(page, `#/lot/${lot}`);
      await page.until((bid) => document.querySelector('.worksheet-stop-state')?.textContent?.includes(bid), row.bid);

      // It is lost: what it held goes to the others.
      await page.click({ button: 'Ended early' });
      await page.fill({ field: 'How it ended' }, 'l');
      await page.press('Enter');
      await page.sees('Lost');
      await goTo(page, '#/plan');
      // What the purse changed may stand there for a moment more.
      await page.until(() =>
        /planned bids? changed.*lost/is.test(document.querySelector('.plan-changed')?.textContent ?? ''),
      );
      expect(await page.run((id) => document.getElementById(id), row.id)).toBeNull();
    },
    PLANNED * 2,
  );

  test(
    'axe finds nothing on a plan that is made, wide or narrow, light or dark, and nothing scrolls sideways',
    async () => {
      const page = await browser.pageAt('options-page/index.html');
      await page.addProgram(AXE);
      for (const width of [1280, 400]) {
        await page.resize(width, 800);
        await page.until(() => document.documentElement.scrollWidth <= innerWidth);
        await page.showAs({ dark: width === 400 });
        expect(await violations(page)).toEqual([]);
      }
      await page.showAs({});
      await page.resize(1280, 800);
    },
    PLANNED,
  );

  test(
    'a lot is pinned and skipped by its keys, and the same key again undoes it',
    async () => {
      const page = await browser.pageAt('options-page/index.html');
      const id = await page.until(() => {
        const row = document.querySelector<HTMLElement>('.plan-row:nth-child(3)');
        row?.querySelector<HTMLElement>('a')?.focus();
        return row?.id;
      });
      const pressed = (words: string) =>
        page.until(
          ({ row, name }) =>
            [...(document.getElementById(row)?.querySelectorAll('button[aria-pressed="true"]') ?? [])].some((one) =>
              one.textContent?.startsWith(name),
            ),
          { row: id, name: words },
        );
      await page.press('s');
      await pressed('Skip');
      await page.until(
        (row) => document.getElementById(row)?.querySelector('.plan-figure')?.textContent === 'leave out',
        id,
      );
      await page.press('p');
      await pressed('Pin');
      await page.press('p');
      await page.until((row) => document.getElementById(row)?.querySelector('[aria-pressed="true"]') === null, id);
      await page.press('ArrowDown');
      expect(await page.run(() => document.activeElement?.closest('tr')?.id)).not.toBe(id);
    },
    PLANNED,
  );
}
