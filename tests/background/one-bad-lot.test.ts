import { beforeEach, expect, test } from 'vitest';
import { lookout } from '../../src/background/look-again.ts';
import type { World } from '../../src/background/world.ts';
import { lotFactsSchema } from '../../src/domain/lot/lot.ts';
import type { LotState } from '../../src/folds/lot-state.ts';
import { inventedSetup } from '../domain/worksheet/invented-setup.ts';
import { freshBrowser, value } from '../store/open-test-store.ts';
import { InventedBrowser } from './invented-browser.ts';
import { at, closeAt, setUp } from './invented-saturday.ts';

const MINUTE = 60_000;
const START = at('2026-11-27', '14:00');
const CLOSE = at('2026-11-27', '15:00');

beforeEach(() => freshBrowser());

/** What the journal may hold of retail, from an older Headroom or from another program. */
const BAD = [
  { low: 0, likely: 1_800_000 },
  { low: 0, likely: 1_800_000, high: 1_800_000 },
  { likely: 999_999_999_900 },
  { low: 1, likely: 1_800_000, high: 999_999_999_900 },
];

const lotFacts = (over: object) =>
  lotFactsSchema.parse({
    year: 2020,
    venueId: 'ocotillo',
    close: closeAt(CLOSE),
    retail: { likely: 1_800_000 },
    ...over,
  });

test('a lot that can’t be worked out is called at its own close, and so is the lot beside it', async () => {
  for (const retail of BAD) {
    freshBrowser();
    const browser = new InventedBrowser(START);
    const ids = await setUp(browser, [
      lotFacts({ model: 'Poisoned', retail }),
      lotFacts({ model: 'Hauler', close: closeAt(CLOSE + 20 * MINUTE) }),
    ]);
    const store = await browser.store();
    const { store: _, rush: __, alerts: ___, ...rest } = inventedSetup();
    value(await store.saveSetup(rest));
    store.close();
    await browser.run(CLOSE + 40 * MINUTE);
    for (const id of ids) expect(browser.said.some(({ keys }) => keys.some((key) => key.startsWith(id)))).toBe(true);
    const titles = browser.said.map(({ title }) => title).join('\n');
    expect(titles).toContain('Poisoned closes in');
    expect(titles).toContain('Hauler closes in');
    expect(browser.faults).toEqual([]);
    const bodies = [...browser.notices.values()].map(({ body }) => body).join('\n');
    expect(bodies).toContain('Stop at $');
    expect(bodies).toContain('Can’t be worked out: ');
  }
});

test('a row of the store that is no lot at all costs no other its call', async () => {
  const browser = new InventedBrowser(START);
  const [bad = '', good = ''] = await setUp(browser, [lotFacts({ model: 'Poisoned' }), lotFacts({ model: 'Hauler' })]);
  const spoilt = (lot: LotState) =>
    lot.id === bad
      ? { ...lot, facts: { ...lot.facts, retail: { likely: 'nobody knows' } as never, vin: 7 as never } }
      : lot;
  breakStore(browser, (lots) => lots.map(spoilt));
  browser.time = CLOSE - 14 * MINUTE;
  await browser.wake();
  const keys = browser.said.flatMap((one) => one.keys);
  for (const id of [bad, good]) expect(keys.some((key) => key.startsWith(id))).toBe(true);
});

test('a look that fails altogether says so where a reminder is due, and is taken again', async () => {
  const browser = new InventedBrowser(CLOSE - 14 * MINUTE);
  await setUp(browser, [lotFacts({ model: 'Hauler' })]);
  const shown: string[] = [];
  const reported: unknown[] = [];
  const woken: string[] = [];
  const world: World = {
    ...bareWorld(browser),
    openStore: async () => {
      const store = await browser.store();
      return { ok: true, value: { ...store, setup: () => Promise.reject(new Error('the setup is torn')) } };
    },
    showNotice: async ({ title, body }) => void shown.push(`${title}. ${body}`),
    wakeAt: async (name) => void woken.push(name),
    report: (error) => reported.push(error),
  };
  await lookout(world).lookAgain('call-due');
  expect(shown.join()).toContain('your lots can’t be read. Check what closes next.');
  expect(shown.join()).toContain('the setup is torn');
  expect(reported.join()).toContain('the setup is torn');
  expect(woken).toContain('unfinished-look');
});

test('dates after a sale that can’t be worked out cost no lot its call before a close', async () => {
  const browser = new InventedBrowser(CLOSE - 14 * MINUTE);
  await setUp(browser, [lotFacts({ model: 'Hauler' })]);
  const world: World = { ...bareWorld(browser), openStore: async () => ({ ok: true, value: await deaf(browser) }) };
  const said: string[] = [];
  const reported: unknown[] = [];
  await lookout({
    ...world,
    showNotice: async ({ title }) => void said.push(title),
    report: (e) => reported.push(e),
  }).lookAgain();
  expect(said.join()).toContain('Hauler closes in 14 min');
  expect(reported.join()).toContain('the books are torn');
});

function bareWorld(browser: InventedBrowser): World {
  return {
    now: () => browser.wallClock(),
    zone: () => 'America/Boise' as never,
    openStore: async () => ({ ok: true, value: await browser.store() }),
    noticesAllowed: async () => true,
    noticeIds: async () => [],
    showNotice: async () => undefined,
    clearNotice: async () => undefined,
    wakeAt: async () => undefined,
    cancelWake: async () => undefined,
    showBadge: async () => undefined,
    report: () => undefined,
    after: () => () => undefined,
    recall: async () => undefined,
    remember: async () => undefined,
  };
}

/** A store of which what follows a sale can't be read. */
async function deaf(browser: InventedBrowser) {
  const store = await browser.store();
  return { ...store, lotsAfterSale: () => Promise.reject(new Error('the books are torn')) };
}

/** Has the store answer with rows that no version of Headroom ever wrote. */
function breakStore(browser: InventedBrowser, spoil: (lots: LotState[]) => LotState[]): void {
  const open = browser.store.bind(browser);
  browser.store = async () => {
    const store = await open();
    return { ...store, lotsByClose: async (options) => spoil(await store.lotsByClose(options)) };
  };
}
