import type { BrowserContext } from 'playwright-core';
import { LOTS_SHOWN } from '../../src/views/lots/lots-shown.ts';
import { waitUntil } from '../browser/drivers/wait-until.ts';
import { atMost, type BenchRow, measureBoth } from './run-bench.ts';
import { extensionUrl, openProgram, timeToOpen, withChromium } from './run-in-browser.ts';

const LOTS = 20_000;
const COMPANION = 'options-page/index.html#/lots';
const BARE = 'bare-pages/bare.html';
const MOST = 1.5;
/** What a screen that is drawn 60 times a second leaves for one frame. */
const FRAME_MS = 1000 / 60;
/** Work of a page that takes longer than this is felt as a halt (the browsers' own measure of a long task). */
const LONG_TASK_MS = 50;

/** The companion page over many lots: how soon its first row stands, and how it scrolls; and ten times the lots. */
export async function run(): Promise<BenchRow[]> {
  return withChromium(async (context) => {
    await fill(context, LOTS);
    const few = await measured(context, LOTS);
    await fill(context, 9 * LOTS);
    return [...few, ...(await measured(context, 10 * LOTS))];
  });
}

async function fill(context: BrowserContext, count: number): Promise<void> {
  const program = await openProgram(context, 'lots-program.ts');
  await program.evaluate((rows) => window.lotsProgram.import('headroom', rows), count);
  // As a page does after each change; from then on the background sees to the first rows, whether or not a page is open.
  await program.evaluate(() => chrome.runtime.sendMessage({ headroom: 'plan-again', request: {} }));
  await waitUntil('the first rows to be kept', () => program.evaluate(() => window.lotsProgram.firstRowsAreKept()));
  await program.close();
}

async function measured(context: BrowserContext, count: number): Promise<BenchRow[]> {
  const lots = `${count.toLocaleString('en-US')} lots`;
  const first = await measureBoth(
    () => timeToOpen(context, COMPANION, LOTS_SHOWN),
    () => timeToOpen(context, BARE, 'first-contentful-paint'),
  );
  const { work, longest } = await scrolled(context);
  return [
    atMost(MOST, `first row of ${lots}, against an empty page of the extension`, first.ours, first.rival),
    atMost(1, `work for a frame while scrolling ${lots}, against the time a frame has`, work, FRAME_MS),
    atMost(1, `longest piece of work while scrolling ${lots}, against a long task`, longest, LONG_TASK_MS),
  ];
}

const PASSES = 4;

/**
 * Scrolls through the list in passes of a second. Gives the processor time of the page for one frame, and the longest task;
 * of the passes the best, because a task that only the machine's other work made long is not long in each of them.
 */
async function scrolled(context: BrowserContext): Promise<{ work: number; longest: number }> {
  const page = await context.newPage();
  await page.goto(extensionUrl(COMPANION));
  await page.waitForFunction(() => document.querySelector('.list-count')?.textContent?.includes(' of '));
  const protocol = await context.newCDPSession(page);
  await protocol.send('Performance.enable', { timeDomain: 'threadTicks' });
  const processorMs = async () => {
    const { metrics } = await protocol.send('Performance.getMetrics');
    return (metrics.find(({ name }) => name === 'TaskDuration')?.value ?? Number.NaN) * 1000;
  };
  const passes: { work: number; longest: number }[] = [];
  for (let i = 0; i < PASSES; i++) {
    const before = await processorMs();
    const { frames, longest } = await page.evaluate(scrollForASecond);
    passes.push({ work: ((await processorMs()) - before) / frames, longest });
  }
  await page.close();
  return {
    work: Math.min(...passes.map(({ work }) => work)),
    longest: Math.min(...passes.map(({ longest }) => longest)),
  };
}

/** Runs in the page, at more than a row a frame. */
async function scrollForASecond(): Promise<{ frames: number; longest: number }> {
  const list = document.querySelector('.lot-scroll');
  if (list === null) throw new Error('there is no list to scroll');
  let longest = 0;
  const observer = new PerformanceObserver((entries) => {
    for (const { duration } of entries.getEntries()) longest = Math.max(longest, duration);
  });
  observer.observe({ type: 'longtask' });
  let frames = 0;
  for (const end = performance.now() + 1000; performance.now() < end; frames++) {
    list.scrollTop += 90;
    await new Promise(requestAnimationFrame);
  }
  observer.disconnect();
  return { frames, longest };
}
