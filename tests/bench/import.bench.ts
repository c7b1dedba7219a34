import type { Page } from 'playwright-core';
import { atMost, type BenchRow, median } from './run-bench.ts';
import { openProgram, withChromium } from './run-in-browser.ts';

const ROWS = 50_000;
const ROUNDS = 3;
const MOST = 2;
const MOST_GROWTH = 1.5;

/** A list of lots from a CSV file into the store, against the bare parser and a bare database; and ten times the list. */
export async function run(): Promise<BenchRow[]> {
  return withChromium(async (context) => {
    const page = await openProgram(context, 'lots-program.ts');
    await timed(page, 'importBare', ROWS / 10);
    await timed(page, 'import', ROWS / 10);
    const times: { ours: number[]; bare: number[] } = { ours: [], bare: [] };
    for (let round = 0; round < ROUNDS; round++) {
      times.bare.push(await timed(page, 'importBare', ROWS));
      times.ours.push(await timed(page, 'import', ROWS));
    }
    const ours = median(times.ours);
    const rows = ROWS.toLocaleString('en-US');
    return [
      atMost(
        MOST,
        `importing ${rows} rows, against a bare CSV parse and bare IndexedDB puts`,
        ours,
        median(times.bare),
      ),
      atMost(
        MOST_GROWTH,
        `importing ${(10 * ROWS).toLocaleString('en-US')} rows, against ten times the time of ${rows}`,
        await timed(page, 'import', 10 * ROWS),
        10 * ours,
      ),
    ];
  });
}

/** In a fresh database, which is thrown away afterwards, outside the time. */
async function timed(page: Page, way: 'import' | 'importBare', count: number): Promise<number> {
  const name = `${way}-bench`;
  const spent = await page.evaluate(([w, n, c]) => window.lotsProgram[w](n, c), [way, name, count] as const);
  await page.evaluate((n) => window.lotsProgram.remove(n), name);
  return spent;
}
