import { existsSync, readdirSync } from 'node:fs';
import type { BenchRow } from '../../tests/bench/run-bench.ts';

const FOLDER = 'tests/bench';

/**
 * `npm run bench [-- part-of-a-name]`: measures what tests/bench holds against its rivals, and fails where a limit is
 * broken. Each `*.bench.ts` exports `run()`, which resolves to its rows.
 */
export async function run(
  flags: readonly string[],
  load: (file: string) => Promise<Record<string, unknown>>,
): Promise<number> {
  const all = existsSync(FOLDER) ? readdirSync(FOLDER).filter((file) => file.endsWith('.bench.ts')) : [];
  const wanted = all.filter((file) => flags.every((part) => file.includes(part))).sort();
  if (wanted.length === 0) throw new Error(`There is no benchmark ${flags.join(' ')} in ${FOLDER}.`);
  const rows: BenchRow[] = [];
  // One after the other: they would spoil each other's times.
  for (const file of wanted) {
    console.log(`${file} …`);
    const { run: measure } = (await load(`${FOLDER}/${file}`)) as { run: () => Promise<readonly BenchRow[]> };
    rows.push(...(await measure()));
  }
  printTable(rows);
  const broken = rows.filter((row) => !row.ok);
  console.log(`${rows.length - broken.length} within their limits, ${broken.length} over.`);
  return broken.length === 0 ? 0 : 1;
}

function printTable(rows: readonly BenchRow[]): void {
  const cells = rows.map(({ what, ours, rival, ratio, limit, ok }) => [
    what,
    `${figure(ours)} ms`,
    `${figure(rival)} ms`,
    figure(ratio),
    limit,
    ok ? 'ok' : 'OVER',
  ]);
  const table = [['what', 'ours', 'rival', 'ratio', 'limit', ''], ...cells];
  const widths = table[0]?.map((_, column) => Math.max(...table.map((row) => row[column]?.length ?? 0))) ?? [];
  for (const row of table) {
    console.log(
      row.map((cell, i) => (i === 0 ? cell.padEnd(widths[i] ?? 0) : cell.padStart(widths[i] ?? 0))).join('  '),
    );
  }
}

function figure(value: number): string {
  return value >= 100 ? value.toFixed(0) : value.toPrecision(3);
}
