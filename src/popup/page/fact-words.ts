import { sayClose } from '../../domain/close/say-close.ts';
import type { LotField } from '../../domain/lot/lot.ts';
import { cents } from '../../domain/money/cents.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import type { Setup } from '../../domain/setup/setup.ts';
import { instant } from '../../domain/time/instant.ts';
import type { FactChange } from '../../folds/fact-changes.ts';

/** What each fact that a page can state is called. */
export const FACT_WORDS: Partial<Record<LotField, string>> = {
  vin: 'VIN',
  year: 'Year',
  make: 'Make',
  model: 'Model',
  trim: 'Trim',
  miles: 'Miles',
  lotNumber: 'Lot number',
  venueId: 'Venue',
  venueName: 'Venue, as written',
  sale: 'Sale',
  seller: 'Seller',
  location: 'Location',
  close: 'Closes',
  priceNow: 'Price now',
  increment: 'Increment',
  titleId: 'Title',
  unread: 'Could not be read',
  notes: 'Notes',
  pageUrl: 'Page',
};

const MONEY: ReadonlySet<LotField> = new Set(['priceNow', 'increment']);

/** A fact as it is read aloud; a close in store time. */
export function factInWords(field: LotField, value: FactChange['after'], setup: Setup): string {
  if (typeof value === 'number') {
    if (MONEY.has(field)) return formatMoney(cents(value));
    return field === 'year' ? String(value) : value.toLocaleString('en-US');
  }
  if (typeof value === 'string') {
    if (field === 'venueId') return setup.venues.find(({ id }) => id === value)?.name ?? value;
    if (field === 'titleId') return setup.titles.find(({ id }) => id === value)?.name ?? value;
    return value;
  }
  if (typeof value === 'object' && 'instant' in value) return sayClose(value, setup.store.zone, instant(Date.now()));
  return 'changed';
}
