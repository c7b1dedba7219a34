import type { Around, Distractor, Framework } from './family.ts';

/** Where pages of the families that are held out name their house and its sale. */
export const HELD_OUT_AROUNDS: readonly Around[] = [
  (body, { house, sale }) =>
    `<div id="root"><div class="top"><a href="/"><img src="/logo.svg" alt="${house}"></a><span>${house}</span></div><div class="crumbs"><a href="/events">Events</a> › <a href="/events/1">${sale}</a> › This page</div>${body}</div>`,
  (body, { house, sale }) =>
    `<table width="100%"><tr><td class="head"><b>${house}</b></td></tr><tr><td><i>${sale}</i></td></tr><tr><td>${body}</td></tr><tr><td><font size="1">All sales final. ${house} sells to licensed dealers.</font></td></tr></table>`,
  (body, { house, sale }) =>
    `<header class="h"><div>${house}</div><nav><ul><li><a href="/buy">Buy</a></li><li><a href="/sell">Sell</a></li></ul></nav></header><div class="sub">Sale: ${sale}</div><article>${body}</article><footer><p>${house} · doors open at 7:30 AM · deposit $500</p></footer>`,
];

/** What could be taken for the lot on pages of the families that are held out. */
export const HELD_OUT_DISTRACTORS: Readonly<Record<string, Distractor>> = {
  nothing: () => '',
  'a sister in a sentence': ({ name, lot }) =>
    `<p>Its sister, a ${name} with ${lot.miles.toLocaleString('en-US')} miles, brought $${lot.priceNow.toLocaleString('en-US')} here last week.</p>`,
  'the ones before and after': ({ name, lot }) =>
    `<section class="near"><h5>Before and after this lot</h5><ul><li>${name}, $${lot.priceNow.toLocaleString('en-US')}</li><li>${name} ${lot.vin}, no bids</li></ul></section>`,
  'parts from another': ({ lot }) => `<p class="rm">Remarks: tailgate taken from ${lot.vin}, 201,000 mi, crushed.</p>`,
  'monthly payments': () =>
    '<div class="calc"><h4>Payment calculator</h4><label>Amount</label> <b>$14,000</b> <label>Per month</label> <b>$412</b></div>',
  'other cars in the program': ({ lot }) =>
    `<script>window.__S={"next":{"vin":"${lot.vin}","price":${lot.priceNow},"lotNumber":"9"}}</script>`,
  'who watches': () => '<p>14 dealers are watching. Last bid 3 minutes ago. Opened at $500.</p>',
  'results table': ({ name, lot }) =>
    `<table><caption>Yesterday’s results</caption><tr><th>Unit</th><th>VIN</th><th>Sold for</th></tr><tr><td>${name}</td><td>${lot.vin}</td><td>$${lot.priceNow.toLocaleString('en-US')}</td></tr></table>`,
};

/** How pages of the families that are held out are written by the programs that make them. */
export const HELD_OUT_FRAMEWORKS: Readonly<Record<string, Framework>> = {
  plain: (markup) => markup,
  'fragments and comments': (markup) =>
    markup
      .replace(/<(div|span|td|dd|li|p)>/g, '<!--[--><$1>')
      .replace(/<\/(div|span|td|dd|li|p)>/g, '<!--/--></$1><!--]-->'),
  'utility classes': (markup, dice) =>
    markup.replace(/<(div|span|td|dd|p)>/g, (_, tag: string) => `<${tag} class="px-${dice.whole(1, 6)} text-sm flex">`),
  'names for tests': (markup, dice) =>
    markup.replace(/<(div|span|td|dd|b)>/g, (_, tag: string) => `<${tag} data-testid="c${dice.whole(1, 99)}" data-qa>`),
};
