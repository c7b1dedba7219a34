import { readFileSync } from 'node:fs';
import { JSDOM } from 'jsdom';
import { describe, expect, test } from 'vitest';
import { BUDGET } from '../../src/capture/budget.ts';
import { snapshot } from '../../src/capture/dom/snapshot.ts';
import { readPage } from '../../src/capture/read-page.ts';
import { readJsonLd } from '../../src/capture/structured/json-ld.ts';
import { readMicrodata } from '../../src/capture/structured/microdata.ts';
import { readRdfa } from '../../src/capture/structured/rdfa.ts';
import { isThing, joinThings, type Thing, type Value } from '../../src/capture/structured/thing.ts';
import { instant } from '../../src/domain/time/instant.ts';
import { zone } from '../../src/domain/time/zone.ts';

/*
 * Source of every page and value here: schema.org's own published examples, github.com/schemaorg/schemaorg at commit
 * cc71c8e, each example by its number. The pages are stored unchanged in the three syntaxes in which schema.org gives them.
 */
const SYNTAXES = ['microdata', 'rdfa', 'json-ld'] as const;
type Syntax = (typeof SYNTAXES)[number];

const pageOf = (example: string, syntax: Syntax) =>
  new JSDOM(readFileSync(`tests/fixtures/schema-org/${example}.${syntax}.html`, 'utf8')).window.document;

function thingsOf(example: string, syntax: Syntax): readonly Thing[] {
  const tree = snapshot(pageOf(example, syntax));
  const things = {
    microdata: () => readMicrodata(tree, BUDGET),
    rdfa: () => readRdfa(tree, BUDGET),
    'json-ld': () => tree.scripts.flatMap((script) => readJsonLd(script.text, BUDGET)),
  }[syntax]();
  joinThings(things);
  return things;
}

/** Follows a path of properties from the first thing of a type to all the texts at its end. */
function textsAt(things: readonly Thing[], type: string, ...path: string[]): readonly string[] {
  let values: readonly Value[] = things.filter((thing) => thing.types.includes(type)).slice(0, 1);
  for (const property of path) {
    values = values.flatMap((value) => (isThing(value) ? (value.properties.get(property) ?? []) : []));
  }
  return values.flatMap((value) => (isThing(value) ? [] : [value.replace(/\s+/g, ' ').trim()]));
}

const ALL = SYNTAXES;
const PUBLISHED: readonly (readonly [string, readonly Syntax[], string, readonly string[], string])[] = [
  ['eg-0328', ALL, 'Car', ['name'], '2009 Volkswagen Golf V GTI MY09 Direct-Shift Gearbox'],
  ['eg-0328', ALL, 'Car', ['color'], 'Black'],
  ['eg-0328', ALL, 'Car', ['vehicleEngine', 'name'], '4 cylinder Petrol Turbo Intercooled 2.0 L (1984 cc)'],
  ['eg-0328', ALL, 'Person', ['makesOffer', 'priceSpecification', 'price'], '18000'],
  ['eg-0328', ALL, 'Person', ['makesOffer', 'priceSpecification', 'priceCurrency'], 'USD'],
  ['eg-0328', ALL, 'Offer', ['itemOffered', 'name'], '2009 Volkswagen Golf V GTI MY09 Direct-Shift Gearbox'],
  ['eg-0010', ALL, 'Product', ['name'], 'Kenmore White 17" Microwave'],
  ['eg-0010', ['microdata', 'rdfa'], 'Product', ['offers', 'price'], '1000.00'],
  ['eg-0010', ['json-ld'], 'Product', ['offers', 'price'], '55.00'],
  ['eg-0010', ALL, 'Product', ['offers', 'priceCurrency'], 'USD'],
  ['eg-0011', ALL, 'Product', ['offers', 'lowPrice'], '1250'],
  ['eg-0011', ALL, 'Product', ['offers', 'highPrice'], '1495'],
  ['eg-0011', ALL, 'Product', ['aggregateRating', 'ratingCount'], '24'],
  ['eg-0208', ALL, 'ItemList', ['numberOfItems'], '315'],
  ['eg-0208', ALL, 'Product', ['offers', 'price'], '4399.00'],
  ['eg-0394', ['rdfa', 'json-ld'], 'Product', ['offers', 'price'], '1000.00'],
  ['eg-0394', ['rdfa', 'json-ld'], 'Product', ['name'], 'Explosive tennis balls'],
  ['eg-0461', ALL, 'Event', ['startDate'], '2016-04-21T20:00'],
  ['eg-0461', ALL, 'Event', ['location', 'address', 'addressLocality'], 'Philadelphia'],
  ['eg-0461', ALL, 'Event', ['offers', 'lowPrice'], '35'],
];

describe('schema.org’s own examples say the same in every syntax', () => {
  for (const [example, syntaxes, type, path, value] of PUBLISHED) {
    test.each(syntaxes)(`${example}, ${type} ${path.join(' › ')}, in %s`, (syntax) => {
      expect(textsAt(thingsOf(example, syntax), type, ...path)).toContain(value);
    });
  }
});

const read = (example: string, syntax: Syntax) =>
  readPage(pageOf(example, syntax), 'https://schema.org/docs/example.html', instant(Date.UTC(2026, 10, 27)), {
    storeZone: zone('America/Boise'),
  });

describe('what a buyer would get of them', () => {
  test.each(SYNTAXES)(
    'eg-0328, a car for sale, is a lot with the year, the price and no invented VIN, in %s',
    (syntax) => {
      const page = read('eg-0328', syntax);
      const fields = page.lots[0]?.fields;
      expect(page.kind).toBe('one');
      expect(fields?.year?.readings[0]?.value).toBe(2009);
      expect(fields?.make?.readings[0]?.value).toBe('Volkswagen');
      expect(fields?.priceNow?.readings.map(({ value }) => value)).toEqual([1_800_000]);
      expect(fields?.vin).toBeUndefined();
    },
  );

  test.each(
    ['eg-0010', 'eg-0011', 'eg-0208', 'eg-0394', 'eg-0461'].flatMap((example) =>
      SYNTAXES.filter((syntax) => example !== 'eg-0394' || syntax !== 'microdata').map(
        (syntax) => [example, syntax] as const,
      ),
    ),
  )('%s, which sells something else, is no lot, in %s', (example, syntax) => {
    expect(read(example, syntax).lots).toEqual([]);
  });
});
