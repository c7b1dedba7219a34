import { parseMiles } from '../../domain/lot/parse-miles.ts';
import { parseYear } from '../../domain/lot/parse-year.ts';
import { parseMoney } from '../../domain/money/parse-money.ts';
import type { Candidates } from '../draft/candidates.ts';
import type { LotSource } from '../fields/field-reader.ts';
import { readMarkedUpClose } from '../fields/moment-attributes.ts';
import type { OfferPrice } from '../fields/read-money.ts';
import type { PageRecord } from '../structured/page-json.ts';
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
    String(keys.map((key) => record.values.get(key)).find((value) => value !== undefined) ?? '');
  const add = (field: 'make' | 'model' | 'trim' | 'lotNumber', value: string) => {
    if (value === '' || value.length > 80 || (field !== 'lotNumber' && !/\p{L}/u.test(value))) return;
    into.add(field, { value, from: 'structured-data', text: `${field}: ${value}`, score: 0.78 });
  };
  add('make', text('make', 'mk', 'manufacturer', 'makename'));
  add('model', text('model', 'md', 'modelname'));
  add('trim', text('trim', 'trimname', 'trimlevel'));
  add('lotNumber', text('lotnumber', 'lotno', 'lotnum'));
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
  /(?:^|lot|auction|bidding|sale|bid)(?:ends?|endsat|endtime|enddate|enddatetime|closes?|closesat|closetime|closingtime|closedate)(?:utc)?$/;

function readEnd(values: ReadonlyMap<string, string | number>, source: LotSource, into: Candidates): void {
  for (const [key, value] of values) {
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
