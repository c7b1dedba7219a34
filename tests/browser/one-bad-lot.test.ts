import { build } from 'esbuild';
import { expect, test } from 'vitest';
import { goTo } from './demo.ts';
import type { Page } from './drivers/browser.ts';
import { useBrowser } from './drivers/use-browser.ts';
import { waitUntil } from './drivers/wait-until.ts';

const browser = useBrowser('America/Boise');
const MINUTE = 60;

/** What an older Headroom took, or another program may have left; the last is a row that is no lot at all. */
const WAYS = [{ low: 0, likely: 1_800_000 }, { likely: 999_999_999_900 }, null] as const;

async function openTab(): Promise<Page> {
  const page = await browser.open('bare-pages/bare.html');
  const entry = 'tests/browser/programs/clock-program.ts';
  const { outputFiles } = await build({ entryPoints: [entry], bundle: true, format: 'iife', write: false });
  for (const { text } of outputFiles) await page.addProgram(text);
  return page;
}

test('a lot that can’t be worked out is called at its close, and so is every lot beside it', async () => {
  const tab = await openTab();
  await tab.run(() => window.clockProgram.quiet());
  for (const way of WAYS) {
    const [bad = '', good = ''] = await tab.run(
      (when) => window.clockProgram.add(when, null),
      [14 * MINUTE, 9 * MINUTE],
    );
    await tab.run((id, retail) => window.clockProgram.poison(id, retail), bad, way);
    await tab.run(() => window.clockProgram.planAgain());
    const unsaid = () => tab.run((ids) => window.clockProgram.unsaid(ids), [bad, good]);
    await waitUntil('both to be called', async () => (await unsaid()).length === 0);
    // They close so near to each other that one notice names both; it goes by the last of them.
    expect((await browser.noticeIds()).some((one) => one.startsWith(`together-${bad} `))).toBe(true);
  }
  await tab.close();
});

test('every screen shows the others, says why this one has no figure, and its worksheet undoes what was typed', async () => {
  const tab = await openTab();
  const [bad = '', good = '', torn = ''] = await tab.run(
    (when) => window.clockProgram.add(when, null),
    [50 * MINUTE, 55 * MINUTE, 52 * MINUTE],
  );
  await tab.run((id) => window.clockProgram.poison(id, null), torn);
  await tab.run((id) => window.clockProgram.poison(id, { low: 0, likely: 1_800_000 }), bad);
  const page = await browser.open('options-page/index.html#/lots');
  await page.resize(1280, 900);
  await page.sees('Can’t be worked out: the low end of retail is $0');
  await page.until((id) => document.querySelector(`a[href="#/lot/${id}"]`), good);
  await goTo(page, '#/now');
  await page.sees('can’t be worked out: the low end of retail is $0');
  await goTo(page, '#/week');
  await page.until((id) => document.querySelector(`a[href*="${id}"], a[href^="#/week/"]`), good);

  await goTo(page, `#/lot/${bad}`);
  await page.sees('The max bid can’t be worked out');
  // What can't be meant is refused where it is typed, and what was there stays.
  await page.fill({ field: 'Likely' }, '9,999,999,999');
  await page.press('Enter');
  await page.sees('is more than any car costs');
  await page.fill({ field: 'Likely' }, '18,000');
  await page.press('Enter');
  await page.run(() => {
    for (const part of document.querySelectorAll('details')) part.open = true;
  });
  await page.click({ button: 'Undo' });
  await page.until(() => !document.body.textContent?.includes('The max bid can’t be worked out'));
  await page.close();

  const popup = await browser.open('popup/popup.html');
  await popup.until((id) => document.querySelectorAll('.popup-lot').length > 2 && id, good);
  await popup.sees('can’t be worked out');
  await popup.close();
  await tab.close();
});
