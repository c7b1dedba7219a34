import { describe, expect, test } from 'vitest';
import { plainPage, readHtml } from '../../scripts/reader/stored-page.ts';

const CARS = [
  { name: '2019 Larkspur Hauler 250', vin: '4XZHBGK05KA389190' },
  { name: '2021 Corvid Toolhouse', vin: '4XZHBGK03MA389191' },
  { name: '2017 Harrow Farmstead 1500', vin: '4XZHBGK08HA389192' },
] as const;

async function closesOf(body: string): Promise<readonly unknown[]> {
  const html = `<!-- https://www.juniperflats.example/list -->\n<!doctype html><html lang="en"><title>Run list</title>${body}</html>`;
  const { lots } = plainPage(await readHtml(html, 'list', null));
  expect(lots.map((lot) => lot.vin)).toEqual(CARS.map(({ vin }) => vin));
  return lots.map((lot) => lot.close);
}

describe('what stands above the rows of a list', () => {
  test('is their day, and “40,000 mi,” in a row is no Wednesday in German', async () => {
    const rows = CARS.map(({ name, vin }, at) => `<li>${name}, ${vin}, 40,000 mi, now $9,000, closes 9:0${at} AM</li>`);
    expect(
      await closesOf(`<h1>Closing Nov 28, 2026</h1><ul>${rows.join('')}</ul><footer>Times shown are Central.</footer>`),
    ).toEqual(['2026-11-28T15:00:00Z', '2026-11-28T15:01:00Z', '2026-11-28T15:02:00Z']);
  });

  test('holds for what follows it, and not for the lot before it', async () => {
    const [first, ...others] = CARS.map(
      ({ name, vin }) => `<div><a href="/${vin}">${name}</a><p>VIN ${vin}</p><p>Bid $9,000</p></div>`,
    );
    const body = `<h1>November 28</h1><h3>Closing 10:00 AM Pacific</h3>${first}<h3>Closing 10:30 AM Pacific</h3>${others.join('')}`;
    expect(await closesOf(body)).toEqual(['2026-11-28T18:00:00Z', '2026-11-28T18:30:00Z', '2026-11-28T18:30:00Z']);
  });

  test('is no close of any lot where they close one after the other', async () => {
    const lots = CARS.map(
      ({ name, vin }) => `<div><a href="/${vin}">${name}</a><p>VIN ${vin}</p><p>Bid $9,000</p></div>`,
    );
    const body = `<h1>Run</h1><p>Lots begin closing Saturday, Nov 28 at 2:00 PM CT, one a minute in lot order.</p>${lots.join('')}`;
    expect(await closesOf(body)).toEqual([undefined, undefined, undefined]);
  });

  test('names their columns, though they are plain boxes', async () => {
    const cells = (texts: readonly string[]) => `<div>${texts.map((text) => `<div>${text}</div>`).join('')}</div>`;
    const heads = cells(['Lot', 'Vehicle', 'VIN', 'Miles', 'High', 'Closes (ET)']);
    const rows = CARS.map(({ name, vin }, at) =>
      cells([String(10 + at), name, vin, '40,000', '$9,000', `11/28 9:0${at} AM`]),
    );
    expect(await closesOf(`<h2>Fleet run</h2>${heads}${rows.join('')}`)).toEqual([
      '2026-11-28T14:00:00Z',
      '2026-11-28T14:01:00Z',
      '2026-11-28T14:02:00Z',
    ]);
  });
});
