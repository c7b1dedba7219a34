import { bareText } from './facts.ts';
import { each, factOf, type ListLayout, type LotLayout } from './family.ts';

/** How pages of the families that are held out show one lot. */
export const HELD_OUT_LAYOUTS: Readonly<Record<string, LotLayout>> = {
  'terms in boxes': ({ name, facts }) =>
    `<h1>${name}</h1><dl class="g">${each(facts, ({ label, value }) => `<div><dt>${label}</dt><dd>${value}</dd></div>`)}</dl>`,
  'grid of turns': ({ name, facts }) =>
    `<h1>${name}</h1><div class="grid">${each(facts, ({ label, value }) => `<span class="l">${label}</span><span class="d">${value}</span>`)}</div>`,
  'headings over values': ({ name, facts }) =>
    `<h1>${name}</h1>${each(facts, ({ label, value }) => `<section><h4>${label}</h4><p>${value}</p></section>`)}`,
  'fields of a form': ({ name, facts }) =>
    `<h1>${name}</h1><form>${each(facts, ({ field, label, value }) => `<label for="f-${field}">${label}</label><output id="f-${field}">${value}</output>`)}</form>`,
  'elements of its own': ({ name, facts }) =>
    `<unit-page><unit-title><h1>${name}</h1></unit-title>${each(facts, ({ label, value }) => `<unit-fact><span slot="name">${label}</span><span slot="says">${value}</span></unit-fact>`)}</unit-page>`,
  'one line of bars': ({ name, facts }) =>
    `<h1>${name}</h1><p>${facts.map(({ label, value }) => `${label}: ${value}`).join(' | ')}</p>`,
  'bold labels in items': ({ name, facts }) =>
    `<h1>${name}</h1><ul>${each(facts, ({ label, value }) => `<li><strong>${label}</strong> – ${value}</li>`)}</ul>`,
  'head row over one row': ({ name, facts }) =>
    `<h1>${name}</h1>${halves(facts)
      .map(
        (some) =>
          `<table><thead><tr>${each(some, ({ label }) => `<th>${label}</th>`)}</tr></thead><tbody><tr>${each(some, ({ value }) => `<td>${value}</td>`)}</tr></tbody></table>`,
      )
      .join('\n')}`,
  'columns of a sheet': ({ name, facts }) =>
    `<h2>${name}</h2><pre>\n${each(facts, ({ label, value }) => `${`${label}:`.padEnd(30)}${bareText(value)}`)}\n</pre>`,
};

function halves<Item>(items: readonly Item[]): readonly (readonly Item[])[] {
  const middle = Math.ceil(items.length / 2);
  return [items.slice(0, middle), items.slice(middle)].filter((some) => some.length > 0);
}

/** How pages of the families that are held out show several lots. */
export const HELD_OUT_LISTS: Readonly<Record<string, ListLayout>> = {
  'table by parts of speech': (lots, link, vehicle) =>
    `<div role="table"><div role="row"><span role="columnheader">${vehicle}</span>${each(lots[0]?.facts ?? [], ({ label }) => `<span role="columnheader">${label}</span>`)}</div>${lots
      .map(
        (told) =>
          `<div role="row"><span role="cell"><a href="${link(told)}">${told.name}</a></span>${each(told.facts, ({ value }) => `<span role="cell">${value}</span>`)}</div>`,
      )
      .join('\n')}</div>`,
  'two rows a lot': (lots, link) =>
    `<table>${lots
      .map(
        (told) =>
          `<tbody><tr><th colspan="9"><a href="${link(told)}">${told.name}</a></th></tr><tr>${each(told.facts, ({ label, value }) => `<td><small>${label}</small><br>${value}</td>`)}</tr></tbody>`,
      )
      .join('\n')}</table>`,
  'terms under headings': (lots, link) =>
    lots
      .map(
        (told) =>
          `<h3><a href="${link(told)}">${told.name}</a></h3><dl>${each(told.facts, ({ label, value }) => `<div><dt>${label}</dt><dd>${value}</dd></div>`)}</dl>`,
      )
      .join('\n'),
  'links of boxes': (lots, link) =>
    `<div class="feed">${lots
      .map(
        (told) =>
          `<a class="tile" href="${link(told)}"><div class="t">${told.name}</div>${each(told.facts, ({ label, value }) => `<div class="f"><em>${label}</em><span>${value}</span></div>`)}</a>`,
      )
      .join('\n')}</div>`,
  'lots side by side': (lots, link, vehicle) =>
    `<table><tr><th>${vehicle}</th>${lots.map((told) => `<td><a href="${link(told)}">${told.name}</a></td>`).join('')}</tr>${(
      lots[0]?.facts ?? []
    )
      .map(
        ({ field, label }) =>
          `<tr><th>${label}</th>${lots.map((told) => `<td>${factOf(told, field)}</td>`).join('')}</tr>`,
      )
      .join('\n')}</table>`,
};
