import type { DraftFieldName, FieldValue, ReadFrom, Reading, Sure } from '../../capture/draft/draft-lot.ts';
import { sayClose } from '../../domain/close/say-close.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import type { CloseTime } from '../../domain/time/close-time.ts';
import { instant } from '../../domain/time/instant.ts';
import type { Zone } from '../../domain/time/zone.ts';

/** The fields in the order in which a buyer checks them, with what each is called and asked for. */
export const DRAFT_FIELDS: readonly { readonly name: DraftFieldName; readonly label: string; readonly what: string }[] =
  [
    { name: 'vin', label: 'VIN', what: 'the VIN' },
    { name: 'priceNow', label: 'Price now', what: 'the price now' },
    { name: 'close', label: 'Closes', what: 'the closing time' },
    { name: 'venueName', label: 'Venue', what: 'the venue' },
    { name: 'miles', label: 'Miles', what: 'the odometer' },
    { name: 'title', label: 'Title', what: 'the title statement' },
    { name: 'year', label: 'Year', what: 'the year' },
    { name: 'make', label: 'Make', what: 'the make' },
    { name: 'model', label: 'Model', what: 'the model' },
    { name: 'trim', label: 'Trim', what: 'the trim' },
    { name: 'lotNumber', label: 'Lot number', what: 'the lot number' },
    { name: 'runNumber', label: 'Run number', what: 'the run number' },
    { name: 'increment', label: 'Increment', what: 'the bid increment' },
    { name: 'sale', label: 'Sale', what: 'the sale' },
    { name: 'seller', label: 'Seller', what: 'the seller' },
    { name: 'location', label: 'Location', what: 'the location' },
    { name: 'transmission', label: 'Transmission', what: 'the transmission' },
    { name: 'drive', label: 'Drive', what: 'the drive' },
    { name: 'condition', label: 'Condition', what: 'the condition' },
    { name: 'nextBid', label: 'Next bid', what: 'the next bid' },
    { name: 'buyNow', label: 'Buy now', what: 'the buy-now price' },
  ];

/** Fields without which there is no number, so that they are asked for when the page is silent. */
export const WANTED: ReadonlySet<DraftFieldName> = new Set(['vin', 'priceNow', 'close', 'venueName', 'miles', 'title']);

const MONEY: ReadonlySet<DraftFieldName> = new Set(['priceNow', 'nextBid', 'increment', 'buyNow']);

/** A value as it is shown; a close in store time. */
export function draftValue(name: DraftFieldName, value: FieldValue<DraftFieldName>, storeZone: Zone): string {
  if (typeof value === 'object') return sayClose(value as CloseTime, storeZone, instant(Date.now()));
  if (typeof value === 'string') return value;
  // Which numbers are cents only the field's name says; the schema has checked that these are.
  if (MONEY.has(name)) return formatMoney(value as Parameters<typeof formatMoney>[0]);
  return name === 'year' ? String(value) : value.toLocaleString('en-US');
}

/** Where a value was found. */
export const FROM_WORDS: Record<ReadFrom, string> = {
  'structured-data': 'page data',
  'page-text': 'page text',
  pointed: 'from the place you pointed at',
};

/** "page text, likely". */
export const originWords = ({ from, sure }: Pick<Reading<unknown>, 'from' | 'sure'>): string =>
  `${FROM_WORDS[from]}, ${sure}`;

export const SURE_MEANS: Record<Sure, string> = {
  certain: 'The page says so clearly.',
  likely: 'Most likely right. Check it.',
  doubtful: 'Only a guess. Check it.',
};
