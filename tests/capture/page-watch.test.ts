import { JSDOM } from 'jsdom';
import { describe, expect, test } from 'vitest';
import { TurnedClock } from '../../scripts/reader/visits/turned-clock.ts';
import type { DraftLots } from '../../src/capture/draft/draft-lot.ts';
import { type PageReader, pageReader } from '../../src/capture/page-reader.ts';
import { zone } from '../../src/domain/time/zone.ts';

const FIRST = '5ZXB38E89ME487234';
const SECOND = '5ZXA9NB95LC347889';
const CONTEXT = { storeZone: zone('America/Boise') };

/** A page of a site that goes between lots within one document, with its clock turned by hand. */
function openPage({ loadedAgo = 0 } = {}) {
  const { window } = new JSDOM(
    `<body><h1>2021 Larkspur Hauler 250</h1><dl><dt>VIN</dt><dd id="vin">${FIRST}</dd>
    <dt>Lot</dt><dd id="lot">101</dd><dt>Current bid</dt><dd id="bid">$18,400</dd><dt>Closes</dt><dd id="end">Sat, Nov 28, 2026, 2:05 PM MST</dd></dl></body>`,
    { url: 'https://sale.example/lot/1' },
  );
  const { document } = window;
  const clock = new TurnedClock(Date.UTC(2026, 10, 27, 15));
  let reader: PageReader | undefined;
  const inject = (): PageReader => {
    const view = {
      location: window.location,
      setTimeout: (call: () => void, ms = 0) => clock.setTimeout(call, ms),
      clearTimeout: (id?: number) => clock.clearTimeout(id ?? 0),
    };
    // The reader uses timers and the address only.
    reader = pageReader(document, view as unknown as Window, {
      clock: () => clock.now,
      kept: { pointed: [], watch: reader?.watch },
      loaded: { from: 'https://sale.example/lot/1', justNow: loadedAgo < 3000 },
      onPointed: () => undefined,
    });
    return reader;
  };
  const write = (id: string, text: string) => {
    const element = document.getElementById(id);
    if (element !== null) element.textContent = text;
  };
  return {
    clock,
    inject,
    write,
    goTo: (path: string) => window.history.pushState(null, '', path),
    read: async (how: 'read' | 'readSteadily'): Promise<DraftLots> => {
      let page: DraftLots | undefined;
      void inject()
        [how](CONTEXT)
        .then((read) => {
          page = read;
        });
      await clock.runUntil(clock.now + 30_000, () => page !== undefined);
      if (page === undefined) throw new Error('the page was never read');
      return page;
    },
  };
}

const price = (page: DraftLots) => page.lots[0]?.fields.priceNow?.readings[0];

describe('a page that was loaded just now', () => {
  test('ties its price and close to its VIN', async () => {
    const page = openPage();
    expect((await page.read('readSteadily')).lots[0]?.tied).toEqual(['priceNow', 'close']);
  });

  test('says so only of a reading that waited for it', async () => {
    expect((await openPage().read('read')).lots[0]?.tied).toEqual([]);
  });
});

describe('a page that goes from one lot to another without being loaded', () => {
  test('ties nothing to the new VIN that the old one had, and by hand the mix is doubtful and said', async () => {
    const page = openPage();
    page.inject();
    page.goTo('/lot/2');
    page.write('vin', SECOND);
    page.clock.setTimeout(() => page.write('bid', '$9,000'), 60_000);
    const steady = await page.read('readSteadily');
    expect(steady.lots[0]?.fields.vin?.readings[0]?.value).toBe(SECOND);
    expect(steady.lots[0]?.tied).toEqual([]);
    const byHand = await page.read('read');
    expect(price(byHand)).toMatchObject({ value: 1_840_000, sure: 'doubtful' });
    expect(byHand.notes.map(({ reason }) => reason)).toContain('moved-on');
  });

  test('ties nothing to a VIN that stood still where another lot number was written over the first', async () => {
    const page = openPage();
    page.inject();
    page.write('lot', '102');
    const steady = await page.read('readSteadily');
    expect(steady.lots[0]?.fields.vin?.readings[0]?.value).toBe(FIRST);
    expect(steady.lots[0]?.tied).toEqual([]);
    const byHand = await page.read('read');
    expect(price(byHand)).toMatchObject({ value: 1_840_000, sure: 'doubtful' });
    expect(byHand.notes.map(({ reason }) => reason)).toContain('moved-on');
  });

  test('waits for what comes 700 ms after the VIN', async () => {
    const page = openPage();
    page.inject();
    page.goTo('/lot/2');
    page.write('vin', SECOND);
    page.clock.setTimeout(() => page.write('bid', '$9,000'), 700);
    expect(price(await page.read('readSteadily'))?.value).toBe(900_000);
  });

  test('ties what it puts there in one go with the VIN', async () => {
    const page = openPage();
    page.inject();
    page.goTo('/lot/2');
    page.write('vin', SECOND);
    page.write('bid', '$9,000');
    const steady = await page.read('readSteadily');
    expect(steady.lots[0]?.tied).toEqual(['priceNow']);
  });

  test('ties no figure that stood there before, though it was put there anew', async () => {
    const page = openPage();
    page.inject();
    page.goTo('/lot/2');
    page.write('vin', SECOND);
    page.write('bid', '$18,400');
    expect((await page.read('readSteadily')).lots[0]?.tied).toEqual([]);
  });

  test('is noticed without a new address too', async () => {
    const page = openPage();
    page.inject();
    page.write('vin', SECOND);
    expect((await page.read('readSteadily')).lots[0]?.tied).toEqual([]);
  });

  test('before anybody watched it is not certain of anything', async () => {
    const page = openPage({ loadedAgo: 60_000 });
    page.goTo('/lot/2');
    expect(price(await page.read('read'))?.sure).toBe('likely');
    expect((await page.read('readSteadily')).lots[0]?.tied).toEqual([]);
  });
});
