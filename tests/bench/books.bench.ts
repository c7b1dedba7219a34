import type { BrowserContext } from 'playwright-core';
import { BOOKS_ADDED_UP, FOLDERS_SHOWN } from '../../src/views/books/folders-shown.ts';
import { waitUntil } from '../browser/drivers/wait-until.ts';
import { atMost, type BenchRow, measureBoth } from './run-bench.ts';
import { openProgram, timeToOpen, withChromium } from './run-in-browser.ts';

const WINS = 2_700;
const WINS_IN_WORDS = '2,700';
const TIMES = 3;
const BOOKS = 'options-page/index.html#/books';
const SHARE = 'options-page/index.html#/books/share';
const BARE = 'bare-pages/bare.html';
const MOST = 1.5;
const FEW_ROUNDS = 3;

/** The books over many wins: how soon their first rows stand, and how the time until all is added up grows. */
export async function run(): Promise<BenchRow[]> {
  return withChromium(async (context) => {
    const few = WINS / TIMES;
    await fill(context, 0, few);
    const once = await addedUp(context);
    await fill(context, few, WINS - few);
    const all = await addedUp(context);
    return [
      await firstRows(context, BOOKS, 'books'),
      await firstRows(context, SHARE, 'a bill to split'),
      atMost(
        MOST,
        `books of ${WINS_IN_WORDS} wins added up, against ${TIMES} times those of a third`,
        all,
        TIMES * once,
      ),
    ];
  });
}

async function fill(context: BrowserContext, from: number, count: number): Promise<void> {
  const program = await openProgram(context, 'books-program.ts');
  await program.evaluate(([first, more]) => window.booksProgram.win(first, more), [from, count] as const);
  await program.evaluate(() => chrome.runtime.sendMessage({ headroom: 'plan-again', request: {} }));
  await waitUntil('the first folders to be kept', () => program.evaluate(() => window.booksProgram.foldersAreKept()));
  await program.close();
}

async function firstRows(context: BrowserContext, screen: string, what: string): Promise<BenchRow> {
  const { ours, rival } = await measureBoth(
    () => timeToOpen(context, screen, FOLDERS_SHOWN),
    () => timeToOpen(context, BARE, 'first-contentful-paint'),
  );
  return atMost(
    MOST,
    `first rows of ${what} with ${WINS_IN_WORDS} wins, against an empty page of the extension`,
    ours,
    rival,
  );
}

/** Milliseconds until all of the books stand. */
async function addedUp(context: BrowserContext): Promise<number> {
  const open = () => timeToOpen(context, BOOKS, BOOKS_ADDED_UP);
  const { ours } = await measureBoth(open, async () => 0, FEW_ROUNDS);
  return ours;
}
