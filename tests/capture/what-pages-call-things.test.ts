import { describe, expect, test } from 'vitest';
import { plainPage, readHtml } from '../../scripts/reader/stored-page.ts';

const VIN = '4XZHBGK05KA389190';

async function lotOf(body: string, address = 'https://www.juniperflats.example/lot/7') {
  const html = `<!-- ${address} -->\n<!doctype html><html lang="en">${body}</html>`;
  const { lots } = plainPage(await readHtml(html, 'lot', null));
  expect(lots).toHaveLength(1);
  return lots[0] ?? {};
}

describe('what a page calls things', () => {
  test('is read by what stands beside it: a hammer that falls at an hour, and one that fell at an amount', async () => {
    const rows = (said: string) =>
      `<h1>2019 Larkspur Hauler 250</h1><table><tr><td>VIN</td><td>${VIN}</td></tr><tr><td>Hammer</td><td>${said}</td></tr></table>`;
    expect(await lotOf(rows('Sat Nov 28, 2026 2:05 PM MT'))).toMatchObject({ close: '2026-11-28T21:05:00Z' });
    expect(await lotOf(rows('$9,400'))).not.toHaveProperty('priceNow');
  });

  test('may stand in turns with its values in one box, known words and unknown ones', async () => {
    const told = [
      'Serial',
      VIN,
      'On the dash',
      '77,045',
      'Wheels driven',
      '2 (rear)',
      'Whatnot',
      'Blue',
      'High bid so far',
      '$11,725',
    ];
    const body = told.map((text, at) => (at % 2 === 0 ? `<span>${text}</span>` : `<b>${text}</b>`)).join('');
    expect(await lotOf(`<h1>2019 Larkspur Hauler 250</h1><div>${body}</div>`)).toMatchObject({
      vin: VIN,
      miles: 77_045,
      drive: '2 (rear)',
      priceNow: 11_725,
    });
  });

  test('names no lot of the page where a line says that it is the next one', async () => {
    const lot = await lotOf(
      `<pre>LOT....... 0117      MILES..... 102,554\nUNIT...... 2019 LARKSPUR HAULER 250\nVIN....... ${VIN}\nNEXT:      0118  2021 CORVID TOOLHOUSE  4XZHBGK03MA389191  88,210</pre>`,
    );
    expect(lot).toMatchObject({ vin: VIN, lotNumber: '0117', miles: 102_554 });
  });

  test('is found in the page’s own records by the address, with amounts only where they say that they are cents', async () => {
    const record = (id: string, vin: string) =>
      `{"id":"${id}","vin":"${vin}","year":2019,"make":"Larkspur","model":"Hauler 250","odo":{"v":63377,"u":"mi"},"highBidCents":1637500,"buyNow":18000,"saleId":"s9"}`;
    const state = `{"sales":{"s9":{"id":"s9","name":"Bayside Van Event"}},"lots":[${record('k-7', VIN)},${record('k-8', '4XZHBGK08HA389192')}]}`;
    const lot = await lotOf(
      `<h1>2019 Larkspur Hauler 250</h1><script type="application/json">${state}</script>`,
      'https://www.juniperflats.example/lot/k-7',
    );
    expect(lot).toMatchObject({ vin: VIN, miles: 63_377, priceNow: 16_375, sale: 'Bayside Van Event' });
    expect(lot).not.toHaveProperty('buyNow');
  });

  test('of a sale is its name, without the day and the list that it stands over', async () => {
    const rows = [VIN, '4XZHBGK03MA389191'].map(
      (vin, at) => `<tr><td>${at + 1}</td><td>2019 Larkspur Hauler 250</td><td>${vin}</td><td>$9,${at}00</td></tr>`,
    );
    const html = `<!-- https://www.juniperflats.example/run -->\n<!doctype html><html lang="en"><body><h1>Juniper Flats Wholesale</h1><h2>Coastal Fleet Saturday: run list</h2><table><tr><th>Lot</th><th>Vehicle</th><th>VIN</th><th>High bid</th></tr>${rows.join('')}</table></body></html>`;
    const { lots } = plainPage(await readHtml(html, 'run', null));
    expect(lots.map(({ sale, venueName }) => [sale, venueName])).toEqual(
      [0, 1].map(() => ['Coastal Fleet Saturday', 'Juniper Flats Wholesale']),
    );
  });
});
