import { JSDOM, VirtualConsole } from 'jsdom';
import { describe, expect, test } from 'vitest';
import type { DraftFieldName, DraftLots } from '../../src/capture/draft/draft-lot.ts';
import { examinePlace } from '../../src/capture/pointing/examine-place.ts';
import { readPage } from '../../src/capture/read-page.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { zone } from '../../src/domain/time/zone.ts';

const NOW = instant(Date.UTC(2026, 10, 27, 15));
const ADDRESS = 'https://sale.example/lot/1';
const CONTEXT = { storeZone: zone('America/Boise') };
const documentOf = (html: string) =>
  new JSDOM(html, { url: ADDRESS, virtualConsole: new VirtualConsole() }).window.document;
const read = (html: string): DraftLots => readPage(documentOf(html), ADDRESS, NOW, CONTEXT);
/** The value that a field settles to, and how sure. */
const said = (page: DraftLots, field: DraftFieldName, lot = 0) => {
  const found = page.lots[lot]?.fields[field];
  return found?.settled === true ? [found.readings[0]?.value, found.readings[0]?.sure] : undefined;
};

const VIN = '5ZXB38E89ME487234';
const OTHER = '5ZXA9NB95LC347889';
/** How a figure is hidden from guests. */
const MASK = 'X'.repeat(3);
const HEAD = `<h1>2021 Larkspur Hauler 250</h1><p>VIN: ${VIN}</p>`;

describe('a figure that is masked or misprinted is no figure', () => {
  test.each([
    `$12,${MASK}`,
    '$1O,4OO',
    '$12,***',
    '$**,400',
    '$18.4M',
    '$1_,___',
    '$12,4xx',
    '$9,•••',
    `12,${MASK}`,
    '1O,400',
  ])('%s as the current bid', (amount) => {
    const page = read(`${HEAD}<dl><dt>Current bid</dt><dd>${amount}</dd></dl><p>Current bid: ${amount}</p>`);
    expect(said(page, 'priceNow')).toBeUndefined();
  });

  test.each(['45,xxx mi', `45,${MASK}`, '4O,210', '45,***', '45***', '45,2?? miles', '4x,xxx', '45,xxx'])(
    '%s as the odometer',
    (miles) => {
      const page = read(`${HEAD}<dl><dt>Odometer</dt><dd>${miles}</dd></dl><p>Odometer: ${miles}</p>`);
      expect(said(page, 'miles')).toBeUndefined();
    },
  );
});

describe('a figure of another car', () => {
  test('is not read where the pointed-at row is gone and the neighbor has one of that name', () => {
    const mine = (inner: string) => `<main>${HEAD}<dl>${inner}</dl></main>`;
    const bid = (amount: string, mark = '') => `<dt>Money in</dt><dd ${mark}>${amount}</dd>`;
    const before = documentOf(mine(bid('$18,400', 'class="mark"')));
    const element = before.querySelector('.mark');
    if (element === null) throw new Error('nothing to point at');
    const about = { field: 'priceNow' as const, url: ADDRESS, at: NOW, context: CONTEXT };
    const place = examinePlace(element, about, before);
    if (!place.ok) throw new Error(place.message);
    const neighbour = `<div><p>Lot 13, VIN ${OTHER}</p><dl>${bid('$44,000')}</dl></div>`;
    const after = documentOf(`${mine('<dt>Row</dt><dd>7</dd>')}${neighbour}`);
    const page = readPage(after, ADDRESS, NOW, { ...CONTEXT, places: [place.value.result] });
    expect(page.kind).toBe('one');
    expect(page.lots[0]?.fields.priceNow).toBeUndefined();
    expect(page.notes.map(({ reason }) => reason)).toContain('place-lost');
  });

  test('that a fee or another bid comes to is not the bid because the label ends in its words', () => {
    const page = read(`${HEAD}<p>Current bid <b>$16,100</b></p>
      <div><span>Buy fee at current bid</span><span>$465</span></div><p>Deposit for the next bid $500</p>`);
    expect(said(page, 'priceNow')?.[0]).toBe(1_610_000);
    expect(page.lots[0]?.fields.nextBid).toBeUndefined();
  });

  test('in a row without a VIN does not go to the lot above it', () => {
    const row = (lot: number, name: string, vin: string, bid: string) =>
      `<tr><td>${lot}</td><td>${name}</td><td>${vin}</td><td>${bid}</td></tr>`;
    const page = read(`<table><tr><th>Lot</th><th>Car</th><th>VIN</th><th>Current bid</th></tr>
      ${row(1, '2021 Larkspur Hauler', VIN, '')}${row(2, 'Hauler, burned', 'gone', '$9,400')}
      ${row(3, '2020 Larkspur Drover', OTHER, '$7,300')}</table>`);
    const above = page.lots.findIndex((lot) => lot.fields.vin?.readings[0]?.value === VIN);
    expect(said(page, 'priceNow', above)).toBeUndefined();
  });

  test('that was sold yesterday makes no lot of it', () => {
    const sold = (name: string, vin: string) => `<li><h3>${name}</h3><p>VIN ${vin}</p><p>$9,400</p></li>`;
    for (const heading of [
      'Sold yesterday',
      'Yesterday’s results',
      'Just sold',
      'Last week’s prices',
      'Recent results',
    ]) {
      const page = read(`<h1>Saturday sale</h1><p>No lot is open now.</p>
        <aside><h2>${heading}</h2><ul>${sold('2021 Larkspur Hauler', VIN)}${sold('2020 Larkspur Drover', OTHER)}</ul></aside>`);
      expect([heading, page.kind]).toEqual([heading, 'none']);
    }
  });

  test('in markup whose VIN is not the one shown says nothing of the lot', () => {
    const markup = { '@type': 'Car', vehicleIdentificationNumber: OTHER, offers: { '@type': 'Offer', price: 44_000 } };
    const page = read(
      `<script type="application/ld+json">${JSON.stringify({ ...markup, mileageFromOdometer: '9,000 mi' })}</script>${HEAD}`,
    );
    expect(said(page, 'vin')?.[0]).toBe(VIN);
    expect(said(page, 'priceNow')).toBeUndefined();
    expect(said(page, 'miles')).toBeUndefined();
  });
});
