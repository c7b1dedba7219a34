import { cents } from '../../domain/money/cents.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import type { WordsFor } from './row.ts';
import type { WATCHING } from './watching.ts';

/** How lots were added, changed and removed, in plain words. */
export const WATCHING_WORDS: WordsFor<typeof WATCHING> = {
  'lots-added': ({ lots }) =>
    lots.length === 1 ? 'Added' : `Added with ${(lots.length - 1).toLocaleString('en-US')} other lots`,
  'lot-changed': ({ set, clear }) =>
    [
      ...Object.entries(set).map(([field, value]) => `${sayField(field)}: ${sayValue(field, value)}`),
      ...clear.map((field) => `${sayField(field)}: cleared`),
    ].join('; '),
  'lot-dropped': () => 'Removed from the list',
};

const FIELD_WORDS: Readonly<Record<string, string>> = {
  vin: 'VIN',
  priceNow: 'Price now',
  proxy: 'Proxy',
  retail: 'Retail',
  comps: 'Comparables',
  ceilings: 'Substitutes',
  claims: 'Claims',
  recon: 'Recon',
  close: 'Close',
  titleId: 'Title',
  venueId: 'Venue',
  venueName: 'Venue name',
  lotNumber: 'Lot number',
  increment: 'Increment',
  pageUrl: 'Page',
};

const sayField = (field: string): string =>
  FIELD_WORDS[field] ?? field.charAt(0).toUpperCase() + field.slice(1).replace(/[A-Z]/g, (c) => ` ${c.toLowerCase()}`);

const MONEY_FIELDS: ReadonlySet<string> = new Set(['priceNow', 'increment', 'transport', 'proxy', 'retail']);

function sayValue(field: string, value: unknown): string {
  if (typeof value === 'number')
    return MONEY_FIELDS.has(field)
      ? formatMoney(cents(value))
      : value.toLocaleString('en-US', { useGrouping: field !== 'year' });
  if (typeof value === 'string') return value;
  if (typeof value === 'object' && value !== null && 'likely' in value) return sayValue(field, value.likely);
  if (typeof value === 'object' && value !== null && 'text' in value) return String(value.text);
  return Array.isArray(value) ? `${value.length} ${value.length === 1 ? 'line' : 'lines'}` : 'changed';
}
