import { cents } from '../../domain/money/cents.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import type { AttachmentKind } from '../../domain/sale/attachment.ts';
import { sayAction, sayResult } from '../../domain/sale/result-words.ts';
import type { Instant } from '../../domain/time/instant.ts';
import { MINUTE } from '../../domain/time/units.ts';
import type { Happening } from '../../journal/happening.ts';
import { sayAfterSale } from './say-after-sale.ts';
import { sayBooks } from './say-books.ts';
import { sayClockHappening } from './say-clock.ts';

/** What an attached file is called. */
export const ATTACHMENT_WORDS: Readonly<Record<AttachmentKind, string>> = {
  'page-picture': 'Picture of the page',
  photo: 'Photo',
  'condition-report': 'Condition report',
  receipt: 'Receipt',
  invoice: 'Invoice',
  title: 'Title',
  message: 'Message',
  other: 'File',
};

/** Written down this much later than it was done, in milliseconds, is worth saying. */
const LATER = MINUTE;

/**
 * When it was done or seen, where that was not the moment in which it was written down; null otherwise. Both matter: the
 * first is what the writer says, the second is what the journal shows.
 */
export function doneAt(happening: Happening, writtenAt: Instant): Instant | null {
  const at =
    happening.kind === 'bid-noted' ? happening.bid.at : happening.kind === 'result-noted' ? happening.at : null;
  return at !== null && Math.abs(at - writtenAt) > LATER ? at : null;
}

/** One entry of a lot's life in plain words. Text from pages and people is in it as it came: show it as text only. */
export function sayHappening(happening: Happening): string {
  switch (happening.kind) {
    case 'lots-added':
      return happening.lots.length === 1
        ? 'It was added'
        : `It came in with ${(happening.lots.length - 1).toLocaleString('en-US')} others`;
    case 'lot-dropped':
      return 'No longer watched';
    case 'undone':
      return 'Something was taken back';
    case 'lot-changed':
      return [
        ...Object.entries(happening.set).map(([field, value]) => `${sayField(field)}: ${sayValue(field, value)}`),
        ...happening.clear.map((field) => `${sayField(field)}: emptied`),
      ].join('; ');
    case 'bid-noted':
      return [sayAction(happening.bid), happening.bid.by && `by ${happening.bid.by}`].filter(Boolean).join(', ');
    case 'result-noted':
      return [
        sayResult(happening.result),
        happening.by && (happening.by === 'live' ? 'bid live' : 'by proxy'),
        happening.bidder && `by ${happening.bidder}`,
        typeof happening.maxBidCents === 'number' && `max bid then ${formatMoney(happening.maxBidCents)}`,
      ]
        .filter(Boolean)
        .join(', ');
    case 'attachment-kept':
      return [
        `${ATTACHMENT_WORDS[happening.attachment.about]} kept: ${happening.attachment.name}`,
        happening.attachment.note,
      ]
        .filter(Boolean)
        .join('. ');
    default:
      return (
        sayAfterSale(happening) ?? sayBooks(happening) ?? sayClockHappening(happening) ?? plainKind(happening.kind)
      );
  }
}

/** A kind without words of its own yet, said by its name. */
const plainKind = (kind: string): string => `${kind.charAt(0).toUpperCase()}${kind.slice(1).replaceAll('-', ' ')}`;

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
  increment: 'Step',
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
