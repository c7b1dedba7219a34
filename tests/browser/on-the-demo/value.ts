import { expect, test } from 'vitest';
import { AXE, violations } from '../axe.ts';
import { goTo } from '../demo.ts';
import type { Browser, Page } from '../drivers/browser.ts';

/** The worksheet of a lot of the demo, down to every input. */
export function valueOfALot(browser: Browser): void {
  const STOP = '.worksheet-stop .figure-large';
  const PARTS = ['retail', 'claims', 'risk', 'matters', 'title', 'days'];

  /** The worksheet of the lot at the top of the list, which has something of everything. */
  async function openFullSheet(): Promise<Page> {
    const page = await browser.pageAt('options-page/index.html');
    await page.resize(1280, 900);
    await page.run(() => document.querySelector<HTMLAnchorElement>('.lot-row:has(.lot-figure) .lot-name')?.click());
    await page.until(() => document.querySelector('.stairs'));
    return page;
  }

  /** Waits for another max bid than before, and gives it. */
  async function otherStop(page: Page, before: string): Promise<string> {
    await page.until((css, old) => document.querySelector(css)?.textContent !== old, STOP, before);
    return page.text(STOP);
  }

  const dollars = (text: string): number => Number(text.replace(/[^0-9.]/g, ''));

  test('says why the number is what it is before anything is opened, and every part says its result', async () => {
    const page = await openFullSheet();
    await page.sees('Expected retail is about');
    await page.sees('One increment higher');
    await page.sees('Check first');
    await page.sees('Capped by a substitute: New');
    for (const part of PARTS) expect((await page.text(`#part-${part} .fold-result`)).length).toBeGreaterThan(10);
    expect(await page.text('#part-matters .fold-result')).toMatch(/the max bid is \$[\d,]+ to \$[\d,]+|Working it out/);
    expect(await page.count('.fold-body')).toBe(0);
  });

  test('its stairs are a few flights with their sums, opened by keyboard down to a step and what is behind it', async () => {
    const page = await browser.pageAt('options-page/index.html');
    const flights = () =>
      page.run(() =>
        [...document.querySelectorAll('.stair-flight > summary .stair-label')].map((one) => one.textContent),
      );
    expect((await flights()).join()).toMatch(/Getting it \d lines,.*Holding and selling it \d lines/);
    const amounts = (css: string) =>
      page.run(
        (rows) =>
          [...document.querySelectorAll(rows)].map((one) =>
            Math.round(Number((one.textContent ?? '').replace('−', '-').replace(/[^-0-9.]/g, '')) * 100),
          ),
        css,
      );
    const landings = await amounts('.landing .stair-amount');
    const sums = await amounts('.stairs > .stairs-list > li > details > summary .stair-amount');
    // Retail less all the rows that are in sight is the max bid.
    expect(sums.reduce((left, sum) => left + sum, landings[0] ?? 0)).toBe(landings[1]);
    expect(await page.count('.stair-steps')).toBe(0);
    await page.run(() => document.querySelector<HTMLElement>('.stair-flight > summary')?.focus());
    await page.press('Enter');
    await page.until(() => document.querySelector('.stair-steps'));
    const [sum] = await amounts('.stair-flight[open] > summary .stair-amount');
    const steps = await amounts('.stair-steps .stair-amount');
    expect(steps.length).toBeGreaterThan(1);
    expect(steps.reduce((all, step) => all + step, 0)).toBe(sum);
    await page.press('Tab');
    await page.press('Enter');
    await page.until(() => document.querySelector('.stair-steps details[open] .stair-inputs'));
    await page.run(() => document.querySelector<HTMLElement>('.stair-flight > summary')?.focus());
    await page.press('Enter');
    await page.until(() => document.querySelector('.stair-steps') === null);
  });

  test('is opened down to its inputs by keyboard, and what is opened stays open on the next lot', async () => {
    const page = await browser.pageAt('options-page/index.html');
    await page.run(() => document.querySelector<HTMLElement>('#part-retail > summary')?.focus());
    await page.press('Enter');
    await page.until(() => document.querySelector('#part-retail .range-curve svg'));
    await page.sees('Odd:');
    await page.sees('Without it, retail would be');
    await page.click({ button: 'Every step, to check by hand' });
    await page.sees('Asking price to selling price, × 0.97');
    const sheet = await page.run(() => location.hash);
    await goTo(page, '#/lots');
    await page.until(() => document.querySelectorAll('.lot-row:has(.lot-figure)').length > 1);
    await page.run(() =>
      document.querySelectorAll<HTMLAnchorElement>('.lot-row:has(.lot-figure) .lot-name')[1]?.click(),
    );
    await page.until(() => document.querySelector('#part-retail[open]'));
    await goTo(page, sheet);
    await page.until(() => document.querySelector('.range-comp'));
  });

  test('takes comparables from a spreadsheet, shows what it read, and moves the max bid here and in the list', async () => {
    const page = await browser.pageAt('options-page/index.html');
    const before = await page.text(STOP);
    const had = await page.count('.comps > tbody');
    await page.click({ button: 'Paste from a spreadsheet' });
    await page.fill(
      { field: 'Comparables, as copied' },
      'Price\tSold or asking\tMiles\tYear\tFrom\n14,900\tsold\t98,000\t2018\tOur own\n15,200\tsold\t101,000\t2018\tOur own\nnot known\tsold\t90,000\t2018\t',
    );
    await page.sees('Row 4 is not used.');
    await page.click({ button: 'Add these 2 comparables' });
    await page.until((rows) => document.querySelectorAll('.comps > tbody').length === rows, had + 2);
    const after = await otherStop(page, before);
    expect(dollars(after)).toBeLessThan(dollars(before));
    await goTo(page, '#/lots');
    await page.until((wanted) => document.querySelector('.lot-table')?.textContent?.includes(wanted), after);
    await page.run(() => history.back());
    await page.until(() => document.querySelector('.stairs'));
  });

  test('keeps the max bid, the state of the bid and the proxy in sight however far one reads, and covers no field', async () => {
    const page = await browser.pageAt('options-page/index.html');
    for (const width of [1280, 400]) {
      await page.resize(width, 800);
      await page.run(() => scrollTo(0, document.documentElement.scrollHeight));
      await page.until(() => scrollY > 200);
      const { top, height } = await page.run(() => {
        const { top, height } = document.querySelector('.worksheet-stop')?.getBoundingClientRect() ?? {
          top: -1,
          height: 999,
        };
        return { top, height };
      });
      expect(top, `at ${width} px`).toBe(0);
      expect(height, `at ${width} px`).toBeLessThan(120);
      const moved = await page.run(() => {
        const before = scrollY;
        document.querySelector<HTMLElement>('.place-proxy input')?.focus();
        return scrollY - before;
      });
      expect(moved, `at ${width} px`).toBe(0);
      // Back up through every field: what has the focus is never under it.
      const covered = await page.run(() =>
        [
          ...document.querySelectorAll<HTMLElement>(
            '.worksheet-inputs input, .worksheet-inputs button, .fold > summary',
          ),
        ]
          .filter((field) => field.getClientRects().length > 0)
          .reverse()
          .filter((field) => {
            field.focus();
            const under = document.querySelector('.worksheet-stop')?.getBoundingClientRect().bottom ?? 999;
            const { top, bottom } = field.getBoundingClientRect();
            // What has several lines shows at least two of them: Firefox moves nothing that is in sight in part.
            return Math.max(top, bottom - 44) < under;
          })
          .map((field) => field.outerHTML.slice(0, 120)),
      );
      expect(covered, `at ${width} px`).toEqual([]);
    }
    await page.resize(1280, 900);
  });

  test('prices a doubt, names the next check, and says loudly what does not fit together', async () => {
    const page = await browser.pageAt('options-page/index.html');
    const before = await page.text(STOP);
    const had = await page.run(() => {
      const part = document.querySelector<HTMLDetailsElement>('#part-claims');
      if (part !== null) part.open = true;
      return document.querySelectorAll('.contradictions li').length;
    });
    await page.click({ button: 'Add a statement' });
    const last = '#part-claims fieldset:last-of-type';
    await page.choose(`${last} select`, 'Mileage');
    await page.fill(`${last} .two input`, '31,000 miles, actual');
    await page.press('Enter');
    await page.fill(`${last} .unit-box.has-before input`, '8000');
    await page.press('Enter');
    expect(dollars(await otherStop(page, before))).toBeLessThan(dollars(before));
    await page.until((count) => document.querySelectorAll('.contradictions li').length > count, had);
    await page.sees('Ask for a photo of the lit odometer.');
    await page.sees('A photo of the lit odometer is worth up to $720.');
  });

  test('with every part open passes axe wide and narrow, light and dark, and prints without controls', async () => {
    const page = await browser.pageAt('options-page/index.html');
    await page.addProgram(AXE);
    await page.run(() => {
      for (const part of document.querySelectorAll<HTMLDetailsElement>('.fold')) part.open = true;
    });
    await page.until((count) => document.querySelectorAll('.fold-body').length >= count, PARTS.length);
    await page.until(() => document.querySelector('.tornado-row'));
    // The rules are the same program in both browsers, so each of them has one of the two looks judged.
    const judged = browser.name === 'chromium' ? 1280 : 400;
    for (const width of [1280, 400]) {
      await page.resize(width, 900);
      expect(await page.run(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
      if (width !== judged) continue;
      await page.showAs({ dark: width === 400 });
      expect(await violations(page), `at ${width} px`).toEqual([]);
    }
    await page.showAs({ print: true });
    expect(await page.count('button')).toBe(0);
    expect(await page.count('.tornado-row')).toBeGreaterThan(1);
    await page.showAs({});
  });
}
