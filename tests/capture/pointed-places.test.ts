import { JSDOM, VirtualConsole } from 'jsdom';
import { describe, expect, test } from 'vitest';
import { examinePlace } from '../../src/capture/pointing/examine-place.ts';
import { readPage } from '../../src/capture/read-page.ts';
import type { PointedPlace } from '../../src/domain/setup/site.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { zone } from '../../src/domain/time/zone.ts';

const NOW = instant(Date.UTC(2026, 10, 27, 15));
const ADDRESS = 'https://sale.example/lot/1';
const CONTEXT = { storeZone: zone('America/Boise') };

/** A part of a lot page in which the reader knows neither label, built in one of the ways pages are built. */
interface Build {
  readonly fact: (label: string, value: string, mark?: string) => string;
  readonly page: (facts: string) => string;
}

const BUILDS: Readonly<Record<string, Build>> = {
  'a table': {
    fact: (label, value, mark = '') => `<tr><th>${label}</th><td ${mark}>${value}</td></tr>`,
    page: (facts) => `<table><tbody>${facts}</tbody></table>`,
  },
  'a definition list': {
    fact: (label, value, mark = '') => `<dt>${label}</dt><dd ${mark}>${value}</dd>`,
    page: (facts) => `<dl>${facts}</dl>`,
  },
  'boxes in boxes': {
    fact: (label, value, mark = '') =>
      `<div class="kv"><div>${label}</div><div><div ${mark}>${value}</div></div></div>`,
    page: (facts) => `<section>${facts}</section>`,
  },
  'label and value in one': {
    fact: (label, value, mark = '') => `<p ${mark}>${label}: ${value}</p>`,
    page: (facts) => `<div>${facts}</div>`,
  },
};

const HEAD = '<h1>2021 Larkspur Hauler 250</h1><p>VIN: 5ZXB38E89ME487234</p>';
const documentOf = (body: string) =>
  new JSDOM(body, { url: ADDRESS, virtualConsole: new VirtualConsole() }).window.document;

function pointAtMark(body: string): PointedPlace {
  const document = documentOf(body);
  const element = document.querySelector('#clock, [data-mark], .mark');
  if (element === null) throw new Error('nothing to point at');
  const answer = examinePlace(element, { field: 'miles', url: ADDRESS, at: NOW, context: CONTEXT }, document);
  if (!answer.ok) throw new Error(answer.message);
  return answer.value.result;
}

/** The miles that a remembered place gives on another page; where it gives none or asks which of two, that this is said. */
function milesBy(place: PointedPlace, body: string): number | 'says so' | 'silent' {
  const draft = readPage(documentOf(body), ADDRESS, NOW, { ...CONTEXT, places: [place] });
  const miles = draft.lots[0]?.fields.miles;
  if (miles?.settled === false) return 'says so';
  const pointed = miles?.readings.find((reading) => reading.from === 'pointed');
  if (pointed !== undefined) return pointed.value;
  return draft.notes.some((note) => note.reason === 'place-lost') ? 'says so' : 'silent';
}

const FOUND = 38_044;
/** What the page became, and whether the value can still be told. `fact` marks what was pointed at as `mark`. */
type Change = (build: Build) => string;
const value = (build: Build, mark?: string) => build.fact('Clock', '38,044', mark);
const others = (build: Build) => [build.fact('Yard row', '12,004'), build.fact('Shed', '17')] as const;

const CHANGES: Readonly<Record<string, readonly [expected: number | 'says so', Change]>> = {
  'nothing but the value': [FOUND, (b) => HEAD + b.page(others(b)[0] + value(b, 'id="clock"') + others(b)[1])],
  'its id': [FOUND, (b) => HEAD + b.page(others(b)[0] + value(b, 'id="k-value"') + others(b)[1])],
  'its id, which another has now': [
    FOUND,
    (b) => HEAD + b.page(b.fact('Yard row', '12,004', 'id="clock"') + value(b) + others(b)[1]),
  ],
  'the order': [FOUND, (b) => HEAD + b.page(others(b)[1] + others(b)[0] + value(b))],
  'its class': [FOUND, (b) => HEAD + b.page(others(b)[0] + value(b, 'class="css-1x7f"') + others(b)[1])],
  'what is around it': [
    FOUND,
    (b) => `<main><div><div>${HEAD}<div>${b.page(others(b)[0] + value(b))}</div></div></div></main>`,
  ],
  'its label': [
    'says so',
    (b) => HEAD + b.page(others(b)[0] + b.fact('Clock of the engine', '38,044', 'id="clock"') + others(b)[1]),
  ],
  'its label into another language': [
    'says so',
    (b) => HEAD + b.page(others(b)[0] + b.fact('Reloj', '38,044', 'id="clock"') + others(b)[1]),
  ],
  'its value, which stands by another label now': [
    'says so',
    (b) => HEAD + b.page(b.fact('Yard row', '38,044', 'id="clock"') + b.fact('Shed', '17')),
  ],
  'its value for a word': [
    'says so',
    (b) => HEAD + b.page(others(b)[0] + b.fact('Clock', 'ask the yard', 'id="clock"') + others(b)[1]),
  ],
  'that it is there twice, alike': [
    FOUND,
    (b) => HEAD + b.page(value(b, 'class="phone"') + others(b)[0] + value(b, 'class="desk"')),
  ],
  'that it is there twice, with two values': [
    'says so',
    (b) => HEAD + b.page(b.fact('Clock', '91,300') + others(b)[0] + value(b)),
  ],
  'a hidden copy before it': [
    FOUND,
    (b) =>
      `${HEAD}<div hidden>${b.page(others(b)[0] + b.fact('Clock', '91,300') + others(b)[1])}</div>${b.page(others(b)[0] + value(b))}`,
  ],
  'a similar car of the same build before it': [
    FOUND,
    (b) =>
      `<aside><h3>Similar vehicles</h3>${b.page(others(b)[0] + b.fact('Clock', '91,300') + others(b)[1])}</aside>${HEAD}${b.page(others(b)[0] + value(b))}`,
  ],
  'another part of the same build before it': [
    'says so',
    (b) =>
      `${b.page(others(b)[0] + b.fact('Clock', '91,300') + others(b)[1])}${HEAD}${b.page(others(b)[0] + value(b) + others(b)[1])}`,
  ],
  'that it is gone': ['says so', (b) => HEAD + b.page(others(b).join(''))],
  'that it is gone, and another moved up': ['says so', (b) => HEAD + b.page(others(b)[0] + b.fact('Shed', '17,500'))],
};

const [ID, ATTRIBUTE, CLASS] = [
  ['with an id', 'id="clock"'],
  ['with an attribute of its own', 'data-mark="clock"'],
  ['with a class only', 'class="mark"'],
] as const;
/** What tells the element apart does not depend on how its page is built: each is tried in two of the ways. */
const MARKS: Readonly<Record<string, readonly (readonly [string, string])[]>> = {
  'a table': [ID, CLASS],
  'a definition list': [ATTRIBUTE],
  'boxes in boxes': [ID, CLASS],
  'label and value in one': [ATTRIBUTE],
};

describe.each(Object.keys(BUILDS))('a place pointed at in %s', (name) => {
  const build = BUILDS[name] as Build;
  describe.each(MARKS[name] ?? [])('%s', (_, mark) => {
    const place = pointAtMark(
      HEAD +
        build.page(build.fact('Yard row', '11,111') + build.fact('Clock', '45,210', mark) + build.fact('Shed', '4')),
    );

    test.each(Object.keys(CHANGES))('is right or says so when the page changed %s', (change) => {
      const [expected, body] = CHANGES[change] as (typeof CHANGES)[string];
      expect(milesBy(place, body(build))).toBe(expected);
    });
  });
});
