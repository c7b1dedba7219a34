import { render } from 'preact';
import { act } from 'preact/test-utils';
import { vi } from 'vitest';
import { noticeId } from '../../src/background/notice-id.ts';
import type { LotFacts, LotId } from '../../src/domain/lot/lot.ts';
import { cents } from '../../src/domain/money/cents.ts';
import { HOUR } from '../../src/domain/time/units.ts';
import type { Happening } from '../../src/journal/happening.ts';
import type { Store } from '../../src/store/store.ts';
import { bidOffer } from '../../src/views/lots/act-offers.ts';
import { maxBidOf } from '../../src/views/lots/bids.ts';
import { standingsUnder } from '../../src/views/lots/standing.ts';
import { InventedBrowser } from '../background/invented-browser.ts';
import { closeAt } from '../background/invented-saturday.ts';
import { freshBrowser, value } from '../store/open-test-store.ts';
import { type Door, lotIn, openAt, setup, until } from './doors.tsx';

export const CLOSE = Date.parse('2026-11-28T13:00:00-07:00');

const FACTS: LotFacts = {
  year: 2021,
  make: 'Larkspur',
  venueId: 'saguaro',
  retail: { likely: cents(3_190_000) },
  close: closeAt(CLOSE),
  priceNow: cents(900_000),
};

export interface Scene {
  readonly browser: InventedBrowser;
  readonly store: Store;
  readonly id: LotId;
}

/** A lot with a price and perhaps a proxy, as it is when somebody comes to a door. */
async function scene(now: number, before: readonly Happening[] = []): Promise<Scene> {
  freshBrowser();
  const browser = new InventedBrowser(now - 2 * HOUR);
  vi.setSystemTime(now - 2 * HOUR);
  const store = await browser.store();
  value(await store.saveSetup(setup));
  const { lots } = value(await store.addLots('typed', [{ facts: FACTS }]));
  const id = lots[0] as LotId;
  const subject = `lot:${id}` as Parameters<Store['append']>[0][number]['subject'];
  for (const happening of before) value(await store.append([{ subject, happening }]));
  browser.time = now;
  vi.setSystemTime(now);
  return { browser, store, id };
}

/** What was written at a door, without what only that door has: the page in front and the lot's own id. */
async function writtenAt({ store, id }: Scene, since: number): Promise<unknown[]> {
  const entries = await store.historyOfLot(id);
  return entries.slice(since).map(({ read }): unknown => {
    if (read.as !== 'known') throw new Error('an entry that is not known');
    const { happening } = read.entry;
    if (happening.kind !== 'result-noted') return happening;
    const { corrects, ...noted } = happening;
    return { ...noted, corrects: corrects !== undefined };
  });
}

export interface Way {
  readonly door: Door;
  readonly does: (scene: Scene) => Promise<void>;
}

/** The same act through each door; gives what each wrote, by door. */
export async function through(
  now: number,
  before: readonly Happening[],
  ways: readonly Way[],
): Promise<Map<string, unknown>> {
  const written = new Map<string, unknown>();
  for (const { door, does } of ways) {
    const one = await scene(now, before);
    const since = (await one.store.historyOfLot(one.id)).length;
    await openAt(door, one.store, one.id);
    await does(one);
    await until(async () => (await one.store.historyOfLot(one.id)).length > since);
    written.set(door, await writtenAt(one, since));
    act(() => render(null, document.body));
    one.store.close();
  }
  return written;
}

/** A button of the notice that the lot has. */
export async function onNotice(now: number, before: readonly Happening[], which: 'bid' | 'lost'): Promise<unknown> {
  const one = await scene(now, before);
  const lot = await lotIn(one.store, one.id);
  const works = standingsUnder(setup);
  const offer = which === 'lost' ? { do: 'lost' as const } : bidOffer(works.bids.open(lot), maxBidOf(works.of(lot)));
  if (offer === null) throw new Error('no bid is offered');
  const since = (await one.store.historyOfLot(one.id)).length;
  await one.browser.press(noticeId({ about: `lot-${one.id}`, route: `#/now/${one.id}`, offers: [offer] }), 0);
  const written = await writtenAt(one, since);
  one.store.close();
  return written;
}
