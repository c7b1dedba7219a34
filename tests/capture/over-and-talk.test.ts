import { JSDOM, VirtualConsole } from 'jsdom';
import { expect, test } from 'vitest';
import { Candidates } from '../../src/capture/draft/candidates.ts';
import type { DraftFieldName, DraftLots } from '../../src/capture/draft/draft-lot.ts';
import { readPage } from '../../src/capture/read-page.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { zone } from '../../src/domain/time/zone.ts';

const NOW = instant(Date.UTC(2026, 10, 27, 15));
const ADDRESS = 'https://sale.example/lots';
const read = (html: string): DraftLots => {
  const { window } = new JSDOM(html, { url: ADDRESS, virtualConsole: new VirtualConsole() });
  return readPage(window.document, ADDRESS, NOW, { storeZone: zone('America/Boise') });
};
const said = (page: DraftLots, field: DraftFieldName, lot = 0) => page.lots[lot]?.fields[field]?.readings[0]?.value;

const CARS = [
  ['401', '2021 Larkspur Hauler 250', '5ZXB38E89ME487234', '3:00 PM'],
  ['402', '2020 Larkspur Hauler 150', '5ZXA9NB95LC347889', '3:10 PM'],
] as const;
const HEAD = '<tr><th>Lot</th><th>Vehicle</th><th>VIN</th><th>Bidding</th><th>Closes</th></tr>';
const row = ([lot, name, vin, close]: (typeof CARS)[number]) =>
  `<tr><td>${lot}</td><td>${name}</td><td>${vin}</td><td>$9,000</td><td>${close}</td></tr>`;
const list = (between = '', above = 'Friday, November 27, 2026. Eastern time.') =>
  `<h1>Friday sale</h1><p>${above}</p><table>${HEAD}${row(CARS[0])}${between}${row(CARS[1])}</table>`;

test('what a seller writes between two rows moves no close, and gives no lot a price', () => {
  const talk = '<tr><td colspan="5">Seller writes: Current bid $1,000. Closes tomorrow at noon.</td></tr>';
  for (const page of [read(list()), read(list(talk))]) {
    expect(page.lots).toHaveLength(2);
    expect(said(page, 'close', 1)).toMatchObject({ instant: Date.UTC(2026, 10, 27, 20, 10) });
    expect([said(page, 'priceNow', 0), said(page, 'priceNow', 1)]).toEqual([900_000, 900_000]);
  }
});

test('a list whose sale is over has no lots to watch, and says so; one that is over at an hour has', () => {
  const over = read(list('', 'Sale of Thursday, November 26, 2026. This sale is over. Prices are final.'));
  expect([over.kind, over.notes.map(({ reason }) => reason)]).toEqual(['none', ['lot-over']]);
  expect(read(list('', 'Friday, November 27, 2026, Eastern time. The sale is over by 4 PM.')).lots).toHaveLength(2);
});

test('cars that are headed as sold on a day are no lots, and take none from the list', () => {
  const sold = '<h2>Sold on Friday</h2><ul><li>2018 Larkspur Hauler 150 5ZXA9NB95LC347889 sold at $9,150</li></ul>';
  const item = (vin: string) => `<li><h3>2021 Larkspur Hauler 250</h3><p>VIN ${vin}</p><p>Current bid $9,000</p></li>`;
  const page = read(`<ol>${item('5ZXB38E89ME487234')}${item('5ZXA38E87ME487235')}</ol>${sold}`);
  expect(page.lots.map((_, at) => said(page, 'priceNow', at))).toEqual([900_000, 900_000]);
});

test('a lot that was withdrawn for a reason has neither a price nor a close', () => {
  const page = read(
    `<h1>2021 Larkspur Hauler 250</h1><p>VIN 5ZXB38E89ME487234</p><div role="alert">WITHDRAWN at the consignor’s request.</div>
     <dl><dt>Current bid</dt><dd>$7,700</dd><dt>Closes</dt><dd>Nov 27, 2026, 1:00 PM MT</dd></dl>`,
  );
  expect(said(page, 'vin')).toBe('5ZXB38E89ME487234');
  expect([said(page, 'priceNow'), said(page, 'close')]).toEqual([undefined, undefined]);
});

test('an amount with blocks over its digits is no amount', () => {
  const page = read(
    '<h1>2021 Larkspur Hauler 250</h1><p>VIN 5ZXB38E89ME487234</p><dl><dt>Current bid</dt><dd>$1█,█50</dd></dl>',
  );
  expect(said(page, 'priceNow')).toBeUndefined();
});

test('dots that lead to a value are no part of it', () => {
  const line = (label: string, value: string) =>
    `<div><span>${label}</span><i>....................</i><span>${value}</span></div>`;
  const page = read(
    `<h1>2021 Larkspur Hauler 250</h1>${line('VIN', '5ZXB38E89ME487234')}${line('Drive', '4x4')}${line('Title', 'Salvage (Arizona)')}`,
  );
  expect([said(page, 'drive'), said(page, 'title')]).toEqual(['4x4', 'Salvage (Arizona)']);
});

test('a reading that no draft may hold costs its field, and not the lot', () => {
  const into = new Candidates(10);
  const reading = { from: 'page-text', text: 'Phoenix', score: 0.9 } as const;
  into.add('location', { ...reading, value: 'x'.repeat(300) });
  into.add('make', { ...reading, value: 'Larkspur' });
  expect(Object.keys(into.settle())).toEqual(['make']);
});
