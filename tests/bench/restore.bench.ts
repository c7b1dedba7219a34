import path from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { removeFolder, temporaryFolder } from '../../scripts/temporary-folder.ts';
import { atMost, type BenchRow } from './run-bench.ts';
import { extensionUrl, openProgram, withChromium } from './run-in-browser.ts';

const ENTRIES = 20_000;
const PICTURES = 1_000;
/** What a hand that presses a button notices as a halt. */
const NOTICED_MS = 100;
/** A task that only the machine's other work made long is not long in each round. */
const ROUNDS = 2;
const OWN = 'headroom';
const OTHER = 'elsewhere';
const LONGEST_WAIT_MS = 300_000;

/** A large backup brought in on the Backup screen: the longest time for which the page could not answer, step by step. */
export async function run(): Promise<BenchRow[]> {
  const folder = temporaryFolder();
  try {
    const rounds: Halts[][] = [];
    for (let round = 0; round < ROUNDS; round++)
      rounds.push(await withChromium((context) => oneRound(context, folder)));
    const size = `${ENTRIES.toLocaleString('en-US')} entries and ${PICTURES.toLocaleString('en-US')} pictures`;
    return (rounds[0] ?? []).map(({ step }, at) => {
      const least = Math.min(...rounds.map((round) => round[at]?.longest ?? Number.NaN));
      return atMost(1, `longest halt while ${step}, ${size}, against what a hand notices`, least, NOTICED_MS);
    });
  } finally {
    removeFolder(folder);
  }
}

interface Halts {
  readonly step: string;
  readonly longest: number;
}

async function oneRound(context: BrowserContext, folder: string): Promise<Halts[]> {
  const program = await openProgram(context, 'restore-program.ts');
  await program.evaluate(([n, e, p]) => window.restoreProgram.fill(n, e, p), [OTHER, ENTRIES, PICTURES] as const);
  const whole = await saved(program, path.join(folder, 'whole.jsonl'));
  const first = await restored(context, whole, 'an empty store');
  // The price of every lot, here and there: all of it clashes.
  for (const [name, offset] of [
    [OWN, 1],
    [OTHER, 2],
  ] as const)
    await program.evaluate(([n, o]) => window.restoreProgram.change(n, o), [name, offset] as const);
  const second = await restored(
    context,
    await saved(program, path.join(folder, 'later.jsonl')),
    'a store that clashes',
  );
  return [...first, ...second];
}

async function saved(program: Page, file: string): Promise<string> {
  const download = program.waitForEvent('download', { timeout: LONGEST_WAIT_MS });
  await program.evaluate((name) => window.restoreProgram.save(name), OTHER);
  await (await download).saveAs(file);
  return file;
}

async function restored(context: BrowserContext, file: string, into: string): Promise<Halts[]> {
  const page = await context.newPage();
  await page.goto(extensionUrl('options-page/index.html#/backup'));
  const input = page.getByLabel('Backup file');
  await input.first().waitFor();
  await page.evaluate(noteHalts);
  await input.first().setInputFiles(file);
  const merge = page.getByRole('button', { name: /^Add what is new/ });
  await merge.waitFor({ timeout: LONGEST_WAIT_MS });
  const reading = await page.evaluate(() => window.longestHalt());
  await merge.click();
  await page.getByText('is restored.').waitFor({ timeout: LONGEST_WAIT_MS });
  const restoring = await page.evaluate(() => window.longestHalt());
  await page.close();
  return [
    { step: `reading a backup, to be held against ${into}`, longest: reading },
    { step: `restoring it into ${into}`, longest: restoring },
  ];
}

/** Runs in the page: from now on `longestHalt` tells the longest task since it was last asked, in milliseconds. */
function noteHalts(): void {
  let longest = 0;
  const note = (entries: PerformanceEntry[]) => {
    for (const { duration } of entries) longest = Math.max(longest, duration);
  };
  const observer = new PerformanceObserver((list) => note(list.getEntries()));
  observer.observe({ type: 'longtask' });
  window.longestHalt = () => {
    note(observer.takeRecords());
    const told = longest;
    longest = 0;
    return told;
  };
}

declare global {
  interface Window {
    longestHalt: () => number;
  }
}
