import { parseMiles } from '../../domain/lot/parse-miles.ts';
import { parseYear } from '../../domain/lot/parse-year.ts';
import { parseMoney } from '../../domain/money/parse-money.ts';
import type { Candidates } from '../draft/candidates.ts';
import { readClose } from '../fields/read-close.ts';
import type { OfferPrice } from '../fields/read-money.ts';
import type { PageFacts } from './page-facts.ts';

/** The price in a page's Open Graph data. */
export function offerPrices(facts: PageFacts, extent: 'page' | 'card'): readonly OfferPrice[] {
  const amount = facts.openGraph.get('product:price:amount') ?? facts.openGraph.get('og:price:amount') ?? '';
  const currency = facts.openGraph.get('product:price:currency') ?? facts.openGraph.get('og:price:currency') ?? '';
  if (extent === 'card' || amount === '' || !/^(?:USD|\$)?$/i.test(currency)) return [];
  const read = parseMoney(amount);
  return read.ok && read.value > 0 ? [{ cents: read.value, text: `price:amount: ${amount}` }] : [];
}

/** The name the site gives itself, as the venue, unless the page says better. */
export function siteName(facts: PageFacts, into: Candidates): void {
  const value = facts.openGraph.get('og:site_name') ?? '';
  if (value === '' || value.length > 80 || into.of('venueName').length > 0) return;
  into.add('venueName', { value, from: 'structured-data', text: `og:site_name: ${value}`, sure: 'likely' });
}

/**
 * Values from the page's own data for the one car whose VIN was read. No standard says what its keys mean, so amounts of
 * money (dollars or cents?) and figures without a unit are left alone.
 */
export function readRecord(facts: PageFacts, into: Candidates): void {
  const vins = new Set(into.of('vin').map((reading) => reading.value));
  const records = facts.records.filter((one) => vins.has(one.vin));
  const [record] = records;
  if (vins.size !== 1 || record === undefined || records.length > 1) return;
  const text = (...keys: string[]) =>
    String(keys.map((key) => record.values.get(key)).find((value) => value !== undefined) ?? '');
  const add = (field: 'make' | 'model' | 'trim' | 'lotNumber', value: string) => {
    if (value === '' || value.length > 80 || (field !== 'lotNumber' && !/\p{L}/u.test(value))) return;
    into.add(field, { value, from: 'structured-data', text: `${field}: ${value}`, sure: 'likely' });
  };
  add('make', text('make'));
  add('model', text('model'));
  add('trim', text('trim'));
  add('lotNumber', text('lotnumber', 'lotno'));
  const year = parseYear(text('year', 'modelyear'), facts.thisYear);
  if (year.ok)
    into.add('year', { value: year.value, from: 'structured-data', text: `year: ${year.value}`, sure: 'likely' });
  const reading = `${text('odometervalue', 'mileagevalue', 'odometer', 'mileage')} ${text('odometerunit', 'mileageunit', 'odometeruom')}`;
  const miles = /\d ?(?:mi|miles|km)$/i.test(reading.trim()) ? parseMiles(reading.trim()) : undefined;
  if (miles?.ok === true)
    into.add('miles', { value: miles.value, from: 'structured-data', text: `odometer: ${reading}`, sure: 'likely' });
  readEnd(record.values, facts, into);
}

const ENDS =
  /(?:^|lot|auction|bidding|sale|bid)(?:ends?|endsat|endtime|enddate|enddatetime|closes?|closesat|closetime|closingtime|closedate)(?:utc)?$/;

function readEnd(values: ReadonlyMap<string, string | number>, facts: PageFacts, into: Candidates): void {
  const markedUp = [...values].flatMap(([key, value]) => {
    const time = String(value);
    const moment = /^\d{10}$/.test(time) ? Number(time) * 1000 : /^\d{13}$/.test(time) ? Number(time) : null;
    const iso =
      moment === null
        ? (/^\d{4}-\d\d-\d\dT[\d:.]+(?:Z|[+-]\d\d:?\d\d)$/.exec(time)?.[0] ?? '')
        : new Date(moment).toISOString();
    return ENDS.test(key) && iso !== '' ? [{ value: iso, text: `${key}: ${time}`, own: true }] : [];
  });
  readClose({ pairs: [], lines: [], scope: { roots: [], skip: new Set() }, markedUp }, facts.clock, into);
}
