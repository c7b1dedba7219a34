import { parseMiles } from '../../domain/lot/parse-miles.ts';
import { parseYear } from '../../domain/lot/parse-year.ts';
import { parseMoney } from '../../domain/money/parse-money.ts';
import { type DataScript, elementsWithin, type PageTree } from '../dom/page-tree.ts';
import type { Candidates } from '../draft/candidates.ts';
import type { LotSource } from '../fields/field-reader.ts';
import { readMarkedUpClose } from '../fields/moment-attributes.ts';
import type { OfferPrice } from '../fields/read-money.ts';
import type { PageRecord } from '../structured/page-json.ts';
import { isKnownLabel } from '../text/label-like.ts';
import type { Line } from '../text/lines.ts';
import type { Pair } from '../text/pair.ts';
import type { PageFacts } from './page-facts.ts';

/** The price in a page's meta data. */
export function offerPrices({ meta }: PageFacts): readonly OfferPrice[] {
  const amount = meta.get('product:price:amount') ?? meta.get('og:price:amount') ?? '';
  const currency = meta.get('product:price:currency') ?? meta.get('og:price:currency') ?? '';
  if (amount === '' || !/^(?:USD|\$)?$/i.test(currency)) return [];
  const read = parseMoney(amount);
  return read.ok && read.value > 0 ? [{ cents: read.value, text: `price:amount: ${amount}` }] : [];
}

/**
 * Values from the page's own data for the one car whose VIN was read. No standard says what its keys mean, so amounts of
 * money (dollars or cents?) and figures without a unit are left alone.
 */
export function readRecord(record: PageRecord, { thisYear }: PageFacts, source: LotSource, into: Candidates): void {
  const text = (...keys: string[]) =>
    String(keys.map((key) => record.values.get(key)?.value).find((value) => value !== undefined) ?? '');
  const add = (field: 'make' | 'model' | 'trim' | 'lotNumber', value: string) => {
    if (value === '' || value.length > 80 || (field !== 'lotNumber' && !/\p{L}/u.test(value))) return;
    into.add(field, { value, from: 'structured-data', text: `${field}: ${value}`, score: 0.78 });
  };
  add('make', text('make', 'mk', 'manufacturer', 'makename'));
  add('model', text('model', 'md', 'modelname'));
  add('trim', text('trim', 'trimname', 'trimlevel'));
  add('lotNumber', text('lotnumber', 'lotno', 'lotnum', 'lotcode', 'lotref'));
  const year = parseYear(text('year', 'modelyear', 'my', 'yr'), thisYear);
  if (year.ok)
    into.add('year', { value: year.value, from: 'structured-data', text: `year: ${year.value}`, score: 0.8 });
  const reading = `${text('odometervalue', 'mileagevalue', 'odov', 'odometer', 'mileage', 'odo')} ${text('odometerunit', 'mileageunit', 'odometeruom', 'odou')}`;
  const miles = /\d ?(?:mi|miles|km)$/i.test(reading.trim()) ? parseMiles(reading.trim()) : undefined;
  if (miles?.ok === true)
    into.add('miles', { value: miles.value, from: 'structured-data', text: `odometer: ${reading}`, score: 0.8 });
  readEnd(record.values, source, into);
}

const ENDS =
  /(?:^|lot|auction|bidding|sale|bid)(?:ends?|endsat|endtime|enddate|enddatetime|closes?|closesat|closetime|closingtime|closedate)(?:utc|ms|epoch|ts)?$/;

function readEnd(values: PageRecord['values'], source: LotSource, into: Candidates): void {
  for (const [key, { value }] of values) {
    if (!ENDS.test(key)) continue;
    const time = String(value);
    const moment = /^\d{10}$/.test(time) ? Number(time) * 1000 : /^\d{13}$/.test(time) ? Number(time) : null;
    const iso =
      moment === null
        ? (/^\d{4}-\d\d-\d\dT[\d:.]+(?:Z|[+-]\d\d:?\d\d)$/.exec(time)?.[0] ?? '')
        : new Date(moment).toISOString();
    if (iso !== '') readMarkedUpClose(iso, `${key}: ${time}`, true, source, into);
  }
}

/**
 * The record of the page's own data that is this lot, by the VIN that was read; without one, by its name and its address.
 * @param link the address of a lot's own page; null where none is known
 */
export function recordOf(
  facts: PageFacts,
  source: LotSource,
  link: string | null,
  into: Candidates,
): PageRecord | null {
  const vins = new Set(into.of('vin').flatMap((reading) => (reading.score >= 0.5 ? [reading.value] : [])));
  const records = facts.records.filter((one) => vins.has(one.vin));
  const [record] = records;
  if (vins.size === 1 && record !== undefined && records.length === 1) return record;
  const own = source.extent === 'card' ? link : facts.pageUrl;
  if (vins.size > 0 || own === null) return null;
  const address = decodeURIComponent(own.replace(/%(?![\dA-Fa-f]{2})/g, '')).toLowerCase();
  const texts = source.lines.filter(({ prose }) => !prose).map(({ text }) => text.toLowerCase());
  const fits = facts.records.filter(({ values }) => {
    const name = [
      ['year', 'modelyear', 'yr', 'my'],
      ['make', 'makename', 'mk'],
      ['model', 'modelname', 'md'],
    ].map((keys) =>
      String(keys.map((key) => values.get(key)?.value).find((value) => value !== undefined) ?? '').toLowerCase(),
    );
    if (name.some((part) => part === '') || !texts.some((text) => text.startsWith(name.join(' ')))) return false;
    return ['id', 'slug', 'lotno', 'lotnumber', 'unitid', 'lotid'].some((key) => {
      const id = String(values.get(key)?.value ?? '').toLowerCase();
      return id.length >= 2 && /\d/.test(id) && address.split(/[/?&=#]/).includes(id);
    });
  });
  const [first] = fits;
  return first !== undefined && fits.length === 1 ? first : null;
}

/** What a page says of itself in its head under names of facts, as `vehicle:vin` or the label and data of a card to share. */
export function metaPairs({ meta }: PageFacts): readonly Pair[] {
  const pairs: Pair[] = [];
  const put = (label: string, value: string) =>
    pairs.push({ label, value, after: '', node: null, how: 'data', prose: false, from: 'structured-data' });
  for (const [property, value] of meta) {
    const card = /^twitter:label(\d)$/.exec(property)?.[1];
    if (card !== undefined) put(value, meta.get(`twitter:data${card}`) ?? '');
    const of = /^(?:vehicle|car|auto|lot|unit|item|product|sale|auction)[:.](.+)$/.exec(property)?.[1];
    const label = of?.replace(/[:._-]+/g, ' ') ?? '';
    if (label !== '' && !/price|amount|currency|condition|availability/.test(label) && isKnownLabel(label))
      put(label, value);
  }
  return pairs.filter(({ value }) => value !== '');
}

/** The sentence in which a page is described to those who only find it: facts in it hold for its one lot. */
export function describedLine({ meta, tree }: PageFacts): readonly Line[] {
  const text = meta.get('description') ?? meta.get('og:description') ?? '';
  return text === '' || text.length > 300
    ? []
    : [{ text, element: tree.root, order: tree.root.order, heading: 0, prose: true }];
}

/** Attributes that hold an object for the page's own program. */
export function attributeScripts({ root }: PageTree): readonly DataScript[] {
  return elementsWithin(root, (element) => element.showing === 'hidden')
    .flatMap(({ attributes }) => [...attributes])
    .flatMap(([name, value]): readonly DataScript[] =>
      name.startsWith('data-') && /^\s*\{.*"vin\w*"\s*:/is.test(value)
        ? [{ type: 'application/json', text: value }]
        : [],
    )
    .slice(0, 500);
}
