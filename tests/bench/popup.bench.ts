import type { BrowserContext } from 'playwright-core';
import { LOTS_SHOWN } from '../../src/views/lots/lots-shown.ts';
import { atMost, type BenchRow, measureBoth } from './run-bench.ts';
import { openProgram, timeToPopUp, withChromium } from './run-in-browser.ts';

const LOTS = 20_000;
const POPUP = 'popup/popup.html';
const BARE = 'bare-pages/bare.html';
const MOST = 1.5;

/** The popup from a stopped background over many lots, against an empty popup; and ten times the lots. */
export async function run(): Promise<BenchRow[]> {
  return withChromium(async (context) => {
    await fill(context, LOTS);
    const few = await measured(context, LOTS);
    await fill(context, 9 * LOTS);
    return [few, await measured(context, 10 * LOTS)];
  });
}

async function fill(context: BrowserContext, count: number): Promise<void> {
  const program = await openProgram(context, 'lots-program.ts');
  await program.evaluate((rows) => window.lotsProgram.import('headroom', rows), count);
  await program.close();
}

async function measured(context: BrowserContext, count: number): Promise<BenchRow> {
  const { ours, rival } = await measureBoth(
    async () => {
      await choosePopup(context, POPUP);
      return timeToPopUp(context, POPUP, LOTS_SHOWN);
    },
    async () => {
      await choosePopup(context, BARE);
      return timeToPopUp(context, BARE, 'first-contentful-paint');
    },
  );
  const lots = count.toLocaleString('en-US');
  return atMost(MOST, `popup from a stopped background over ${lots} lots, against an empty popup`, ours, rival);
}

/** Which page opens under the toolbar button from now on. */
async function choosePopup(context: BrowserContext, file: string): Promise<void> {
  const page = await openProgram(context, 'lots-program.ts');
  await page.evaluate((popup) => chrome.action.setPopup({ popup }), file);
  await page.close();
}
