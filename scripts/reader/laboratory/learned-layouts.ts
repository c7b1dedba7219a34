import { bareText } from './facts.ts';
import { each, factOf, type ListLayout, type LotLayout } from './family.ts';

const BIDDING: ReadonlySet<string> = new Set(['priceNow', 'nextBid', 'increment', 'buyNow', 'close']);

/** How pages of the learned families show one lot. */
export const LEARNED_LAYOUTS: Readonly<Record<string, LotLayout>> = {
  'list of terms': ({ name, facts }) =>
    `<h1>${name}</h1><dl>${each(facts, ({ label, value }) => `<dt>${label}</dt><dd>${value}</dd>`)}</dl>`,
  'table of facts': ({ name, facts }) =>
    `<h1>${name}</h1><table class="spec"><caption>Details</caption>${each(facts, ({ label, value }) => `<tr><th>${label}</th><td>${value}</td></tr>`)}</table>`,
  'rows of boxes': ({ name, facts }) =>
    `<div class="blk"><h1>${name}</h1>${each(facts, ({ label, value }) => `<div class="row"><span>${label}</span><b>${value}</b></div>`)}</div>`,
  'figures over captions': ({ name, facts }) =>
    `<h1>${name}</h1><div class="stats">${each(facts, ({ label, value }) => `<div class="stat"><div class="v">${value}</div><div class="k">${label}</div></div>`)}</div>`,
  'lines with colons': ({ name, facts }) =>
    `<h1>${name}</h1><p>${each(facts, ({ label, value }) => `${label}: <b>${value}</b><br>`)}</p>`,
  'dotted sheet': ({ name, facts }) =>
    `<pre>\n UNIT........ ${name.toUpperCase()}\n${each(facts, ({ label, value }) => ` ${label.toUpperCase().padEnd(20, '.')} ${bareText(value)}`)}\n</pre>`,
  'bidding apart': ({ name, facts }) =>
    `<aside class="bid"><h3>Bidding</h3>${each(
      facts.filter(({ field }) => BIDDING.has(field)),
      ({ label, value }) => `<p>${label}: <strong>${value}</strong></p>`,
    )}</aside><h1>${name}</h1><ul>${each(
      facts.filter(({ field }) => !BIDDING.has(field)),
      ({ label, value }) => `<li><span>${label}</span> <span>${value}</span></li>`,
    )}</ul>`,
  'four cells a row': ({ name, facts }) =>
    `<h2>${name}</h2><table>${pairsOfTwo(facts.map(({ label, value }) => `<td>${label}</td><td>${value}</td>`))}</table>`,
  'ticker line': ({ name, facts }) =>
    `<h1>${name}</h1><p class="tick">${facts
      .filter(({ field }) => BIDDING.has(field))
      .map(({ label, value }) => `${label.toUpperCase()} ${value}`)
      .join(' &nbsp; ')}</p><div class="grid">${each(
      facts.filter(({ field }) => !BIDDING.has(field)),
      ({ label, value }) => `<i>${label.toUpperCase()}</i><span>${value}</span>`,
    )}</div>`,
};

const pairsOfTwo = (cells: readonly string[]): string =>
  cells.map((cell, at) => (at % 2 === 0 ? `<tr>${cell}${cells[at + 1] ?? ''}</tr>` : '')).join('\n');

/** How pages of the learned families show several lots. */
export const LEARNED_LISTS: Readonly<Record<string, ListLayout>> = {
  'table with heads': (lots, link, vehicle) =>
    `<table><tr><th>${vehicle}</th>${each(lots[0]?.facts ?? [], ({ label }) => `<th>${label}</th>`)}</tr>${lots
      .map(
        (told) =>
          `<tr><td><a href="${link(told)}">${told.name}</a></td>${each(told.facts, ({ value }) => `<td>${value}</td>`)}</tr>`,
      )
      .join('\n')}</table>`,
  'cards of terms': (lots, link) =>
    lots
      .map(
        (told) =>
          `<article class="card"><h3><a href="${link(told)}">${told.name}</a></h3><dl>${each(told.facts, ({ label, value }) => `<dt>${label}</dt><dd>${value}</dd>`)}</dl></article>`,
      )
      .join('\n'),
  'cards with small tables': (lots, link) =>
    lots
      .map(
        (told) =>
          `<section class="w"><h4>${told.name}</h4><table>${pairsOfTwo(told.facts.map(({ label, value }) => `<td>${label}</td><td>${value}</td>`))}</table><a href="${link(told)}">Open</a></section>`,
      )
      .join('\n'),
  'rows of boxes under heads': (lots, link, vehicle) =>
    `<div class="r hd"><div>${vehicle}</div>${each(lots[0]?.facts ?? [], ({ label }) => `<div>${label}</div>`)}</div>${lots
      .map(
        (told) =>
          `<div class="r"><div><a href="${link(told)}">${told.name}</a></div>${each(told.facts, ({ value }) => `<div>${value}</div>`)}</div>`,
      )
      .join('\n')}`,
  'name row over facts': (lots, link) =>
    `<table><tr>${each(lots[0]?.facts ?? [], ({ label }) => `<th>${label}</th>`)}</tr>${lots
      .map(
        (told) =>
          `<tr class="name"><td colspan="${told.facts.length}"><a href="${link(told)}">${told.name}</a></td></tr><tr>${each(told.facts, ({ value }) => `<td>${value}</td>`)}</tr>`,
      )
      .join('\n')}</table>`,
  'list with sentences': (lots, link) =>
    `<ol>${lots
      .map(
        (told) =>
          `<li><h2><a href="${link(told)}">${told.name}</a></h2><p>${each(
            told.facts.filter(({ field }) => field !== 'vin'),
            ({ label, value }) => `${label} ${value}.`,
          )}</p><p>VIN ${factOf(told, 'vin')}</p></li>`,
      )
      .join('\n')}</ol>`,
};
