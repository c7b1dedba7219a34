import { afterAll, expect, test } from 'vitest';
import { diceOf } from '../../scripts/learn/dice.ts';
import type { Page } from './drivers/browser.ts';
import { useBrowser } from './drivers/use-browser.ts';
import { openStoreTab } from './open-store-tab.ts';

// A few in the tests; `npm run faults -- --count N --seed S` makes as many as wanted, and names the seed of each that fails.
const COUNT = Number(process.env.FAULTS_COUNT ?? 3);
const SEED = Number(process.env.FAULTS_SEED ?? 20_261_130);
/** Faults in one database: so that each is looked through whole, and none gets too large for that. */
const A_DATABASE = 3;
const HOUR = 3_600_000;

const browser = useBrowser('America/Boise');
const openTab = (name: string) => openStoreTab(browser, name);

interface Fault {
  readonly name: string;
  /** Lets it happen while `pages` write. */
  readonly strike: (pages: readonly Page[]) => Promise<void>;
  readonly writers: 1 | 2;
}

const FAULTS: readonly Fault[] = [
  { name: 'the tab is closed', writers: 1, strike: async ([page]) => page?.close() },
  { name: 'one of two tabs is closed', writers: 2, strike: async ([page]) => page?.close() },
  { name: 'the tab is loaded anew', writers: 1, strike: async ([page]) => page?.reload() },
  { name: 'the background is killed', writers: 2, strike: () => browser.killBackground() },
  { name: 'the browser is killed', writers: 2, strike: () => browser.restart('killed') },
];

/** By fault: how many there were, and how many lots were told as kept before and looked for after. */
const table = new Map<string, { faults: number; lots: number }>();
afterAll(() => {
  for (const [name, { faults, lots }] of table)
    console.log(`${browser.name}: ${name}: ${faults} times, each of ${lots} lots that were told as kept is there`);
});

/** What is written before a fault must be there after it, in one chain, and every view must be what the journal says. */
async function round(seed: number, database: string): Promise<{ readonly name: string; readonly lots: number }> {
  const dice = diceOf(seed);
  for (let i = 0; i < 4; i++) dice.uniform();
  const fault = FAULTS[Math.floor(dice.uniform() * FAULTS.length)];
  if (fault === undefined) throw new Error('no fault');
  const pages: Page[] = [];
  for (let i = 0; i < fault.writers; i++) pages.push(await openTab(database));
  for (const [i, page] of pages.entries()) {
    // A clock that steps back or ahead by hours between two writers.
    const off = dice.uniform() < 0.4 ? Math.round((dice.uniform() - 0.5) * 12 * HOUR) : 0;
    await page.run(
      (name, mark, ms) => {
        window.storeProgram.setOff = ms;
        window.storeProgram.writeWithoutEnd(name, mark);
      },
      database,
      `${seed}${'ab'[i]}`,
      off,
    );
  }
  const wanted = 1 + Math.floor(dice.uniform() * 25);
  const told: string[] = [];
  for (const page of pages)
    told.push(
      ...(await page.until(
        (many) => (window.storeProgram.told.length >= many ? window.storeProgram.told : null),
        wanted,
      )),
    );
  await fault.strike(pages);
  if (fault.name !== 'the browser is killed')
    for (const page of pages) await page.close().catch(() => 'it is closed already');
  const after = await openTab(database);
  const kept = new Set(await after.run((name) => window.storeProgram.lotNumbers(name), database));
  expect(told.filter((number) => !kept.has(number))).toEqual([]);
  expect(await after.run((name) => window.storeProgram.findings(name), database)).toEqual([]);
  expect(await after.run((name) => window.storeProgram.viewsAreRight(name), database)).toBe(true);
  await after.run((name, mark) => window.storeProgram.typeLots(name, mark, 1), database, `${seed}after`);
  await after.close();
  return { name: fault.name, lots: told.length };
}

test(`${COUNT} faults at random moments of writing lose no entry that was told as kept`, {
  timeout: COUNT * 30_000 + 60_000,
}, async () => {
  for (let i = 0; i < COUNT; i++) {
    const seed = SEED + i;
    try {
      const { name, lots } = await round(seed, `faults-${Math.floor(i / A_DATABASE)}`);
      const before = table.get(name) ?? { faults: 0, lots: 0 };
      table.set(name, { faults: before.faults + 1, lots: before.lots + lots });
    } catch (error) {
      throw new Error(`npm run faults -- --count 1 --seed ${seed}: ${error instanceof Error ? error.message : error}`, {
        cause: error,
      });
    }
  }
});
