import { bareText } from './facts.ts';
import { type Around, type Distractor, each, type Framework, factOf } from './family.ts';

/** Where pages of the learned families name their house and its sale. */
export const LEARNED_AROUNDS: readonly Around[] = [
  (body, { house, sale }) =>
    `<header><strong>${house}</strong> <a href="/sales">Sales</a> <a href="/help">Help</a></header><nav><a href="/">Home</a> / <a href="/s">${sale}</a></nav><main>${body}</main><footer>${house}. Office open 8:00 AM to 5:00 PM. Terms of sale apply.</footer>`,
  (body, { house, sale }) =>
    `<div id="page"><div id="logo">${house}</div><p><a href="/">Home</a> / <a href="/catalog">Catalog</a> / <a href="/catalog/9">${sale}</a></p>${body}<p><small>${house}. Questions? Call the office.</small></p></div>`,
  (body, { house, sale }) =>
    `<div class="bar"><b>${house}</b></div><h2>${sale}</h2>${body}<div class="foot">Buyers pay a fee of $385 and $75 for the gate.</div>`,
];

const strangersCard = ({ name, lot }: Parameters<Distractor>[0]): string =>
  `<div class="mini"><b>${name}</b><br>${lot.miles.toLocaleString('en-US')} mi<br>$${lot.priceNow.toLocaleString('en-US')}</div>`;

/** What could be taken for the lot on pages of the learned families. */
export const LEARNED_DISTRACTORS: Readonly<Record<string, Distractor>> = {
  nothing: () => '',
  'similar cars': (stranger) =>
    `<aside><h2>Similar vehicles</h2>${strangersCard(stranger)}<div class="mini">${stranger.name}<br>${stranger.lot.vin}<br>withdrawn</div></aside>`,
  'sold before': (stranger) =>
    `<h3>Sold here before</h3><table class="spec"><tr><th>Vehicle</th><th>VIN</th><th>Date</th><th>Price</th></tr><tr><td>${stranger.name}</td><td>${stranger.lot.vin}</td><td>11/14/2026</td><td>$15,100</td></tr></table>`,
  'what it costs': () =>
    '<table><caption>What you would pay</caption><tr><td>Buy fee</td><td>$385</td></tr><tr><td>Transport, 212 miles</td><td>$640</td></tr><tr><td>Market guide</td><td>$19,900</td></tr></table>',
  'strip of cars': (stranger) =>
    `<div class="blk"><small>Closing after this one</small><div class="strip">${strangersCard(stranger)}${strangersCard(stranger)}</div></div>`,
  'bids so far': (_, { lot }) =>
    `<h3>Bid history</h3><ol>${each([], () => '')}<li>$${lot.priceNow - lot.increment} dealer 12, 9:02 AM</li><li>$${lot.priceNow - 2 * lot.increment} dealer 40, 8:55 AM</li></ol>`,
  'hidden price': (stranger) => `<div style="display:none">Current bid: $1 VIN ${stranger.lot.vin}</div>`,
  'stale markup': (stranger) =>
    `<script type="application/ld+json">${JSON.stringify({ '@context': 'https://schema.org', '@type': 'Car', name: bareText(stranger.name), vehicleIdentificationNumber: stranger.lot.vin, offers: { '@type': 'Offer', price: 1, priceCurrency: 'USD' } })}</script>`,
  'own markup': (_, told) =>
    `<script type="application/ld+json">${JSON.stringify({ '@context': 'https://schema.org', '@type': 'Vehicle', name: `${told.lot.year} ${told.lot.make} ${told.lot.model}`, vehicleIdentificationNumber: told.lot.vin, brand: { '@type': 'Brand', name: told.lot.make }, model: told.lot.model, ...(factOf(told, 'priceNow') === '' ? {} : { offers: { '@type': 'Offer', price: told.lot.priceNow, priceCurrency: 'USD' } }) })}</script>`,
};

/** How pages of the learned families are written by the programs that make them. */
export const LEARNED_FRAMEWORKS: Readonly<Record<string, Framework>> = {
  plain: (markup) => markup,
  'hashed classes': (markup, dice) =>
    markup.replace(
      /<(div|span|td|dd|p|b)>/g,
      (_, tag: string) => `<${tag} class="css-${dice.whole(100, 999)}a${dice.whole(10, 99)}">`,
    ),
  'marks of a framework': (markup) =>
    markup.replace(/<(div|span|td|dd|li)>/g, '<$1 data-v-4f1c2a>').replace(/<\/(div|dd|li)>/g, '<!----></$1>'),
  'boxes in boxes': (markup) => markup.replace(/<b>([^<]*)<\/b>/g, '<div><div><span>$1</span></div></div>'),
};
