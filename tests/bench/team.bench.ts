import type { Page } from 'playwright-core';
import { atMost, type BenchRow, median } from './run-bench.ts';
import { openProgram, withChromium } from './run-in-browser.ts';

/** `TEAM_ENTRIES=200000 npm run bench -- team` for a store of some years. */
const ENTRIES = Number(process.env.TEAM_ENTRIES ?? 20_000);
const CATCH_UP = 10_000;
const ROUNDS = 1;
const MOST = 1.5;
const LONGEST_MS = 100;
const MOST_GROWTH = 1.3;

/** A computer that joins a team against one that restores the same journal's backup; and twice the journal. */
export async function run(): Promise<BenchRow[]> {
  return withChromium(async (context) => {
    const page = await openProgram(context, 'team-program.ts');
    await rounds(page, 1_000, 1);
    const [five, ten, twenty] = [await rounds(page, 5_000), await rounds(page, CATCH_UP), await rounds(page, 20_000)];
    const all = ENTRIES === 20_000 ? twenty : await rounds(page, ENTRIES, 1);
    const entries = ENTRIES.toLocaleString('en-US');
    const rows: BenchRow[] = [
      atMost(MOST, `joining with ${entries} entries, against restoring their backup`, all.join, all.restore),
      atMost(1, 'longest task of a catch-up of 10,000 entries, against 100 ms', ten.longest, LONGEST_MS),
      atMost(MOST_GROWTH, 'joining with 10,000 entries, against twice the time of 5,000', ten.join, 2 * five.join),
      atMost(MOST_GROWTH, 'joining with 20,000 entries, against twice the time of 10,000', twenty.join, 2 * ten.join),
    ];
    return rows;
  });
}

/** Medians of fresh stores, each thrown away afterwards, outside the time. */
async function rounds(page: Page, count: number, times = ROUNDS) {
  const written = await page.evaluate((n) => window.teamProgram.write(n), count);
  console.log(`  ${count.toLocaleString('en-US')} entries in ${written.toLocaleString('en-US')} messages`);
  const [join, restore, longest]: [number[], number[], number[]] = [[], [], []];
  for (let round = 0; round < times; round++) {
    const joined = await page.evaluate(() => window.teamProgram.join('joining'));
    restore.push(await page.evaluate(() => window.teamProgram.restore('restoring')));
    if (!(await page.evaluate(() => window.teamProgram.same('joining', 'restoring'))))
      throw new Error('who joined has another state than who restored');
    join.push(joined.spent);
    longest.push(joined.longest);
    for (const name of ['joining', 'restoring']) await page.evaluate((n) => window.teamProgram.remove(n), name);
  }
  for (const name of ['buyer', 'manager', 'bookkeeper']) await page.evaluate((n) => window.teamProgram.remove(n), name);
  console.log(
    `    joined in ${Math.round(median(join))} ms, longest task ${Math.max(...longest)} ms; restored in ${Math.round(median(restore))} ms`,
  );
  return { join: median(join), restore: median(restore), longest: Math.max(...longest) };
}
