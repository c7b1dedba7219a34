import { expect } from 'vitest';
import type { LotAct } from '../../src/acts/act.ts';
import type { LotFacts, LotId } from '../../src/domain/lot/lot.ts';
import { estimateSchema } from '../../src/domain/money/estimate.ts';
import { wholeSetup } from '../../src/domain/setup/starting-setup.ts';
import type { Store } from '../../src/store/store.ts';
import { doLotAct } from '../../src/views/lots/do-lot-act.ts';
import { standingsUnder } from '../../src/views/lots/standing.ts';
import { value } from '../store/open-test-store.ts';
import { InventedBrowser } from './invented-browser.ts';
import { at, BOISE, closeAt, setUp, VENUE } from './invented-saturday.ts';

const SATURDAY = '2026-11-28';
/** A moment of that Saturday at the store. */
export const here = (time: string) => at(SATURDAY, time);

/** A lot without a bid, whose max bid is $17,800. */
export const lot = (name: string, close: string): LotFacts => ({
  model: name,
  close: closeAt(here(close)),
  venueId: VENUE,
  retail: estimateSchema.parse({ likely: 2_000_000 }),
});

/** A browser that runs from then on, with these lots. */
export async function running(from: string, lots: readonly LotFacts[]) {
  const browser = new InventedBrowser(here(from));
  const ids = (await setUp(browser, lots)) as readonly LotId[];
  await browser.wake();
  return { browser, ids };
}

/** What somebody does on a screen; reminders are planned again after it. */
export async function does(browser: InventedBrowser, id: LotId | undefined, act: LotAct): Promise<void> {
  const store = await browser.store();
  const state = id === undefined ? null : await store.lot(id);
  if (state === null) throw new Error('that lot is not on the list');
  const setup = wholeSetup(await store.setup(), BOISE);
  const place = { setup, standings: standingsUnder(setup), now: browser.wallClock() };
  const done = await doLotAct(store, state, act, place);
  store.close();
  expect(done.as).toBe('kept');
  await browser.wake();
}

/** A page tells another close. */
export async function moves(browser: InventedBrowser, id: LotId | undefined, close: number): Promise<void> {
  if (id === undefined) throw new Error('no lot');
  const store = await browser.store();
  value(await store.changeLot(id, { set: { close: closeAt(close) } }));
  store.close();
  await browser.wake();
}

/** What appeared from then on. */
export const since = (browser: InventedBrowser, from: number) =>
  browser.appeared.filter(({ at: when }) => when >= from).map(({ notice }) => notice);

/** The invented store with another setup of its busy hours, or of its reminders. */
export async function changeSetup(browser: InventedBrowser, set: Parameters<Store['saveSetup']>[0]): Promise<void> {
  const store = await browser.store();
  value(await store.saveSetup(set));
  store.close();
  await browser.wake();
}
