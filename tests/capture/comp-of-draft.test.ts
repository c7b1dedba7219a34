import { JSDOM, VirtualConsole } from 'jsdom';
import { describe, expect, test } from 'vitest';
import { compOfDraft } from '../../src/capture/draft/comp-of-draft.ts';
import { readPage } from '../../src/capture/read-page.ts';
import type { Comp } from '../../src/domain/retail/comp.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { localDateSchema } from '../../src/domain/time/local-date.ts';
import { zone } from '../../src/domain/time/zone.ts';

const NOW = instant(Date.UTC(2026, 10, 27, 15));
const SEEN = { site: 'trucks.example', date: localDateSchema.parse('2026-11-27') };

function compsOn(html: string): readonly (Comp | null)[] {
  const url = 'https://trucks.example/used/7';
  const { document } = new JSDOM(html, { url, virtualConsole: new VirtualConsole() }).window;
  return readPage(document, url, NOW, { storeZone: zone('America/Boise') }).lots.map((lot) => compOfDraft(lot, SEEN));
}

describe('a car on a page', () => {
  test('that asks a price is a comparable: an asking price, with its miles, year, day and where it was seen', () => {
    const html = `<h1>2021 Larkspur Hauler 250</h1><dl><dt>VIN</dt><dd>5ZXB38E89ME487234</dd><dt>Price</dt><dd>$31,900</dd>
      <dt>Mileage</dt><dd>58,210 miles</dd></dl>`;
    expect(compsOn(html)).toEqual([
      {
        kind: 'asking',
        price: 3_190_000,
        miles: 58_210,
        year: 2021,
        differences: [],
        leftOut: false,
        date: '2026-11-27',
        source: 'trucks.example: 2021 Larkspur Hauler 250',
      },
    ]);
  });

  test('that is bid on is none: the bid so far says nothing of what it brings', () => {
    const html = `<h1>2021 Larkspur Hauler 250</h1><dl><dt>VIN</dt><dd>5ZXB38E89ME487234</dd><dt>Current bid</dt><dd>$11,900</dd>
      <dt>Closes</dt><dd>Nov 28, 2026, 2:05 PM MST</dd></dl>`;
    expect(compsOn(html)).toEqual([null]);
  });

  test('that is bid on is none where its close is not read, nor where it can be had at once', () => {
    const head = '<h1>2021 Larkspur Hauler 250</h1><dl><dt>VIN</dt><dd>5ZXB38E89ME487234</dd>';
    expect(compsOn(`${head}<dt>Current bid</dt><dd>$11,900</dd></dl>`)).toEqual([null]);
    expect(compsOn(`${head}<dt>Buy it now</dt><dd>$21,900</dd></dl>`)).toEqual([null]);
  });

  test('without a price is none', () => {
    const html = '<h1>2021 Larkspur Hauler 250</h1><p>VIN: 5ZXB38E89ME487234</p><p>Mileage: 58,210</p>';
    expect(compsOn(html)).toEqual([null]);
  });
});
