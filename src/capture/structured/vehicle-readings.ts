import { parseMiles } from '../../domain/lot/parse-miles.ts';
import { parseYear } from '../../domain/lot/parse-year.ts';
import { type Cents, cents } from '../../domain/money/cents.ts';
import { parseMoney } from '../../domain/money/parse-money.ts';
import { checkDigitMatches } from '../../domain/vin/check-digit.ts';
import { readVin } from '../../domain/vin/read-vin.ts';
import type { Candidates } from '../draft/candidates.ts';
import type { OfferPrice } from '../fields/read-money.ts';
import type { Pair } from '../text/pair.ts';
import { onlyText, type Thing, textsOf, thingsOf } from './thing.ts';
import type { Vehicle } from './vehicles.ts';

/** What a vehicle's markup gives beyond plain values: words to be read like labeled text, prices, and closing times. */
export interface MarkedUp {
  readonly pairs: readonly Pair[];
  readonly offers: readonly OfferPrice[];
  readonly closes: readonly MarkedUpClose[];
  readonly otherCurrency: boolean;
}

export interface MarkedUpClose {
  /** The value of a date property, such as 2026-11-28T14:05-07:00. */
  readonly value: string;
  readonly text: string;
  /** The lot's own offer ends then, and not just the sale that it is in. */
  readonly own: boolean;
}

/** Reads the typed properties of schema.org that say something about a lot, into `into` and the answer. */
export function readVehicle(vehicle: Vehicle, thisYear: number, into: Candidates): MarkedUp {
  readVinOf(vehicle, into);
  readNameOf(vehicle.thing, thisYear, into);
  readMilesOf(vehicle.thing, into);
  return {
    pairs: pairsOf(vehicle),
    offers: vehicle.offers.flatMap((offer) => priceOf(offer)),
    closes: closesOf(vehicle),
    otherCurrency: vehicle.offers.some((offer) => currencyOf(offer) !== ''),
  };
}

function readVinOf(vehicle: Vehicle, into: Candidates): void {
  const vin = readVin(vehicle.vin);
  if (!vin.ok) return;
  const stated = vehicle.thing.properties.has('vehicleIdentificationNumber');
  const score = checkDigitMatches(vin.value) ? (stated ? 0.9 : 0.7) : 0.4;
  const text = `${stated ? 'vehicleIdentificationNumber' : 'serialNumber'}: ${vehicle.vin}`;
  into.add('vin', { value: vin.value, from: 'structured-data', text, score });
}

function readNameOf(thing: Thing, thisYear: number, into: Candidates): void {
  for (const property of ['vehicleModelDate', 'modelDate', 'productionDate']) {
    const year = parseYear(onlyText(thing, property).slice(0, 4), thisYear);
    if (!year.ok) continue;
    const score = property === 'productionDate' ? 0.4 : 0.9;
    into.add('year', { value: year.value, from: 'structured-data', text: `${property}: ${year.value}`, score });
  }
  const words = [
    ['make', ['brand', 'manufacturer']],
    ['model', ['model']],
    ['trim', ['vehicleConfiguration']],
  ] as const;
  for (const [field, properties] of words) {
    const value = onlyText(thing, ...properties);
    if (value === '' || value.length > 80 || /^https?:/.test(value)) continue;
    into.add(field, { value, from: 'structured-data', text: `${properties[0]}: ${value}`, score: 0.9 });
  }
}

/** `mileageFromOdometer`: unit code KMT for kilometers, SMI for statute miles (schema.org), or the unit in words. */
function readMilesOf(thing: Thing, into: Candidates): void {
  const quantity = thingsOf(thing, 'mileageFromOdometer')[0];
  const plain = quantity === undefined ? onlyText(thing, 'mileageFromOdometer') : '';
  const value = quantity === undefined ? plain : onlyText(quantity, 'value');
  const unit = quantity === undefined ? '' : onlyText(quantity, 'unitCode') || onlyText(quantity, 'unitText');
  const name = /^(?:KMT|km|kms|kilomet(?:er|re)s?)$/i.test(unit)
    ? ' km'
    : /^(?:SMI|mi|miles?)$/i.test(unit)
      ? ' mi'
      : '';
  // An unknown unit is no miles: it may be hours or meters.
  if (value === '' || (unit !== '' && name === '')) return;
  const miles = parseMiles(/[a-z]/i.test(value) ? value : `${value}${name}`);
  if (!miles.ok) return;
  const known = name !== '' || /[a-z]/i.test(value);
  const text = `mileageFromOdometer: ${value}${unit === '' ? '' : ` ${unit}`}`;
  into.add('miles', { value: miles.value, from: 'structured-data', text, score: known ? 0.9 : 0.7 });
}

/** Who sells; where that is not said, who makes the offer. */
function sellersOf(offer: Thing): readonly Thing[] {
  const seller = thingsOf(offer, 'seller');
  return seller.length > 0 ? seller : thingsOf(offer, 'offeredBy');
}

function pairsOf(vehicle: Vehicle): readonly Pair[] {
  const { thing, offers, events, sellers } = vehicle;
  const pairs: Pair[] = [];
  const put = (label: string, value: string) => {
    if (value !== '')
      pairs.push({
        label,
        value,
        after: '',
        node: thing.element,
        how: 'cell',
        prose: false,
        from: 'structured-data',
      });
  };
  for (const sold of [...offers.flatMap((offer) => sellersOf(offer)), ...sellers]) {
    put('seller', onlyText(sold, 'name'));
  }
  for (const offer of offers) {
    for (const text of textsOf(offer, 'seller', 'offeredBy').slice(0, 1)) put('seller', text);
    for (const place of thingsOf(offer, 'availableAtOrFrom')) put('location', placeName(place));
  }
  for (const event of events) {
    put('sale name', onlyText(event, 'name'));
    for (const place of thingsOf(event, 'location')) put('location', placeName(place));
  }
  for (const place of thingsOf(thing, 'contentLocation', 'location', 'availableAtOrFrom'))
    put('location', placeName(place));
  put('location', onlyText(thing, 'contentLocation'));
  put('known damage', onlyText(thing, 'knownVehicleDamages'));
  put('transmission', withoutAddress(onlyText(thing, 'vehicleTransmission')));
  put('drive', withoutAddress(onlyText(thing, 'driveWheelConfiguration')));
  for (const property of thingsOf(thing, 'additionalProperty', 'identifier')) {
    const label = onlyText(property, 'name') || onlyText(property, 'propertyID');
    if (label !== '') put(label, onlyText(property, 'value'));
  }
  return pairs;
}

/** "Boise, ID" from an address, else the name of the place. */
function placeName(place: Thing): string {
  const address = thingsOf(place, 'address')[0] ?? place;
  const parts = [onlyText(address, 'addressLocality'), onlyText(address, 'addressRegion')].filter(
    (part) => part !== '',
  );
  return parts.length > 0 ? parts.join(', ') : onlyText(place, 'name') || onlyText(place, 'address');
}

/** `https://schema.org/FourWheelDriveConfiguration` is "Four Wheel Drive". */
function withoutAddress(text: string): string {
  const name = /^https?:\/\/schema\.org\/([A-Za-z]{1,60})$/.exec(text)?.[1];
  return name === undefined ? text : name.replace(/Configuration$/, '').replace(/(?<=[a-z])(?=[A-Z])/g, ' ');
}

/** The currency of an offer where it is not US dollars; else empty. */
function currencyOf(offer: Thing): string {
  const code = [offer, ...thingsOf(offer, 'priceSpecification')].map((one) => onlyText(one, 'priceCurrency')).join('');
  return code === '' || /^(?:USD|US\$|\$)$/i.test(code) ? '' : code;
}

/** Only a price that stands alone: of several specifications or a range, none is the price. */
function priceOf(offer: Thing): readonly OfferPrice[] {
  if (currencyOf(offer) !== '') return [];
  const from = [offer, ...thingsOf(offer, 'priceSpecification')];
  const prices = new Set(from.flatMap((one) => textsOf(one, 'price')));
  const [price] = prices;
  if (price === undefined || prices.size > 1) return [];
  const read = plainCents(price);
  return read === null || read === 0 ? [] : [{ cents: read, text: `price: ${price}` }];
}

/** schema.org writes prices with a point before the decimals and nothing between thousands; pages also print them. */
function plainCents(price: string): Cents | null {
  const parts = /^(\d{1,10})(?:\.(\d{1,2})0*)?$/.exec(price);
  if (parts !== null) return cents(Number(parts[1]) * 100 + Number((parts[2] ?? '').padEnd(2, '0')));
  const read = parseMoney(price);
  return read.ok && read.value >= 0 ? read.value : null;
}

function closesOf(vehicle: Vehicle): readonly MarkedUpClose[] {
  const ends = (thing: Thing, own: boolean, ...properties: string[]) =>
    properties.flatMap((property) =>
      textsOf(thing, property).map((value) => ({ value, text: `${property}: ${value}`, own })),
    );
  return [
    ...vehicle.offers.flatMap((offer) => ends(offer, true, 'availabilityEnds', 'validThrough')),
    ...vehicle.events.flatMap((event) => ends(event, false, 'endDate')),
  ];
}
