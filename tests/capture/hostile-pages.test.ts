import { JSDOM, VirtualConsole } from 'jsdom';
import { describe, expect, test } from 'vitest';
import { draftLotsSchema } from '../../src/capture/draft/draft-lot.ts';
import { readPage } from '../../src/capture/read-page.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { zone } from '../../src/domain/time/zone.ts';
import { worked } from './worked.ts';

const NOW = instant(Date.UTC(2026, 10, 27, 15));
const URL_OF = 'https://hostile.example/lot/1';
const documentOf = (html: string) =>
  new JSDOM(html, { url: URL_OF, virtualConsole: new VirtualConsole() }).window.document;
const read = (document: Document) => readPage(document, URL_OF, NOW, { storeZone: zone('America/Boise') });

/** The work of one reading, in milliseconds. */
function cost(document: Document): number {
  const start = worked();
  read(document);
  return worked() - start;
}

const LOT = '<h1>2021 Larkspur Hauler 250</h1><p>VIN: 5ZXB38E89ME487234</p><p>Current bid: $18,400</p>';
const inLines = (part: string) => (n: number) => `<p>${part.repeat(20)}</p>`.repeat(n / 80);
const inOne = (part: string) => (n: number) => `<p>${part.repeat(n)}</p>`;

/** Texts on which a careless pattern takes quadratic time or worse, each of a size that grows with n. */
const FAMILIES: readonly (readonly [string, (n: number) => string])[] = [
  ['dollar signs', inOne('$')],
  ['figures with commas', inOne('1,234,')],
  ['figures with blanks', inOne('123 ')],
  ['digits', inOne('7')],
  ['blanks', inOne(' \u00a0\t')],
  ['labels without values', inOne('Current bid: ')],
  ['labels in lines', inLines('Closes: Current bid $1 ')],
  ['capital letters', inOne('A')],
  ['almost VINs', inOne('5ZXB38E89ME48723 ')],
  ['VINs in a row', inOne('5ZXB38E89ME487234 ')],
  ['colons', inOne(':')],
  ['bars', inOne(' | ')],
  ['dashes after labels', inLines('VIN – ')],
  ['beginnings of a lot that is over', inOne('This lot has been ')],
  ['countdowns at nought', inLines('Closes in: 00:00:00 0h 0m ')],
  ['VINs in elements of their own', (n) => `<p>${'<b>5ZXB38E89ME487234</b>'.repeat(n / 20)}</p>`],
  ['headings over others', (n) => '<aside><h3>Bid history</h3><p>x</p></aside>'.repeat(n / 40)],
  [
    'grids by their roles',
    (n) =>
      `<div role="grid">${'<div role="row"><div role="cell">Miles</div><div role="cell">4</div></div>'.repeat(n / 80)}</div>`,
  ],
  ['brackets', inOne('(')],
  ['times', inOne('2:05 PM ')],
  ['days', inOne('Sat Nov 28 ')],
  ['countdowns', inOne('1d 2h 3m ')],
  ['years', inOne('2021 Larkspur ')],
  ['one inline element after another', (n) => `<p>${'<b>x</b>'.repeat(n / 10)}</p>`],
  ['rows of a table', (n) => `<table>${'<tr><td>Miles</td><td>4</td></tr>'.repeat(n / 40)}</table>`],
  ['terms of a list', (n) => `<dl>${'<dt>VIN</dt><dd>x</dd>'.repeat(n / 40)}</dl>`],
  ['cards of a list', (n) => '<article class="c"><h3>2021 Larkspur Hauler</h3><p>Lot 7</p></article>'.repeat(n / 40)],
  ['references to itself', (n) => '<div itemscope itemref="a" id="a" itemprop="offers"></div>'.repeat(n / 20)],
  ['JSON in JSON', (n) => `<script type="application/ld+json">${'{"offers":'.repeat(n)}1${'}'.repeat(n)}</script>`],
  ['a wide list in JSON', (n) => `<script type="application/ld+json">[${'{"@type":"Car"},'.repeat(n)}{}]</script>`],
];

describe('a page made to be slow', () => {
  test.each(FAMILIES)('%s cost in proportion to their number', (_, of) => {
    const [small, large] = [2000, 8000].map((n) => documentOf(LOT + of(n))) as [Document, Document];
    // Four times the text: four times the work, with room for noise; a quadratic pattern would take sixteen times.
    const excess = () => {
      const bound = 9 * cost(small) + 600;
      return cost(large) - bound;
    };
    // Measured once more where it was too much: the first reading may have had rubbish to collect.
    const first = excess();
    expect(first < 0 ? first : excess()).toBeLessThan(0);
  });

  test('of five megabytes is read to its budget, says so, and still gives its lot', () => {
    // Few elements, because jsdom takes a millisecond for the style of each; the browser tests have many.
    const filler = `<p>${'Nothing of note here, only words and more words. '.repeat(300)}</p>`;
    const page = read(documentOf(LOT + filler.repeat(5_000_000 / filler.length)));
    expect(page.notes.map(({ reason }) => reason)).toContain('page-too-large');
    expect(page.lots[0]?.fields.vin?.readings[0]?.value).toBe('5ZXB38E89ME487234');
    expect(JSON.stringify(page).length).toBeLessThan(20_000);
  });

  test('nested two thousand deep does not overflow', () => {
    const document = documentOf(LOT);
    let inner: Element = document.body;
    for (let depth = 0; depth < 2000; depth++) {
      const next = document.createElement('div');
      inner.append(next);
      inner = next;
    }
    inner.textContent = 'Current bid: $1';
    const page = read(document);
    expect(page.lots[0]?.fields.priceNow?.readings.map(({ value }) => value)).toEqual([1_840_000]);
    expect(page.notes.map(({ reason }) => reason)).toContain('page-too-large');
  });
});

describe('whatever a page says', () => {
  test('keeps within the sizes that the popup takes', () => {
    const long = 'x'.repeat(50_000);
    const page = read(
      documentOf(
        `<title>${long}</title>${LOT}<dl>${['Seller', 'Location', 'Title', 'Condition', 'Lot', 'Sale', 'Trim']
          .map((label) => `<dt>${label}</dt><dd>${long}</dd>`)
          .join('')}</dl>${`<p>Current bid: $1${long}</p>`.repeat(50)}`,
      ),
    );
    expect(draftLotsSchema.safeParse(page).error?.issues).toBeUndefined();
    expect(JSON.stringify(page).length).toBeLessThan(60_000);
  });

  test('stays text: markup, scripts and directions of writing among it do nothing', () => {
    const evil = '&lt;img src=x onerror=alert(1)&gt; \u202e{{constructor}} javascript:alert(1)';
    const page = read(documentOf(`${LOT}<dl><dt>Seller</dt><dd>${evil}</dd><dt>Location</dt><dd>${evil}</dd></dl>`));
    const seller = page.lots[0]?.fields.seller?.readings[0];
    expect(seller?.value).toContain('<img src=x onerror=alert(1)>');
    // A mark that turns the direction round could make one value read like another.
    expect(JSON.stringify(page)).not.toContain('\u202e');
  });

  test('gives no lot of thousands more than the list can hold', () => {
    const card = (at: number) =>
      `<li class="lot"><h3>2021 Larkspur Hauler ${at}</h3><p>Lot ${at}</p><p>Current bid: $${at}00</p></li>`;
    const page = read(documentOf(`<ul>${Array.from({ length: 900 }, (_, at) => card(at + 1)).join('')}</ul>`));
    expect(page.kind).toBe('many');
    expect(page.lots.length).toBeLessThanOrEqual(300);
  });

  test('no lot is read off an address that is not of the web', () => {
    for (const url of ['javascript:alert(1)', 'data:text/html,x', 'file:///etc/passwd', 'about:blank', 'nonsense']) {
      expect(readPage(documentOf(LOT), url, NOW, { storeZone: zone('America/Boise') }).kind).toBe('none');
    }
  });

  test('a link that is no page of the same site is never taken as the lot’s own', () => {
    const item = (at: number, href: string) =>
      `<li class="lot"><a href="${href}"><h3>202${at} Larkspur Hauler</h3></a><p>Lot ${at}</p><p>Current bid: $${at},000</p></li>`;
    const page = read(
      documentOf(
        `<ul>${item(1, 'javascript:alert(1)')}${item(2, 'https://elsewhere.example/x')}${item(3, 'data:text/html,x')}</ul>`,
      ),
    );
    expect(page.lots.map(({ pageUrl }) => pageUrl)).toEqual([URL_OF, URL_OF, URL_OF]);
  });
});
