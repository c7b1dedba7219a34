import { type Comp, compSchema } from '../../domain/retail/comp.ts';
import type { LocalDate } from '../../domain/time/local-date.ts';
import { settledReading } from './draft-facts.ts';
import type { DraftLot } from './draft-lot.ts';

const BIDDING = ['close', 'nextBid', 'increment', 'buyNow', 'runNumber'] as const;
const SPEAKS_OF_BIDS = /\b(?:bids?|bidding|offers?)\b/i;

/**
 * A car that a page asks a price for, as a comparable: always an asking price, since nobody has paid it yet. Null where
 * the page settles no price, and where bids are taken: what is bid so far says nothing of what a car brings, and what ends
 * the bidding at once is a dealer's price and not a customer's.
 * @param seen the site it was seen on, and the date there and then in the store's zone
 */
export function compOfDraft(
  { fields, heading }: DraftLot,
  seen: { readonly site: string; readonly date: LocalDate },
): Comp | null {
  if (BIDDING.some((field) => fields[field] !== undefined)) return null;
  const asked = settledReading(fields, 'priceNow');
  if (asked === undefined || SPEAKS_OF_BIDS.test(asked.text)) return null;
  const price = asked.value;
  const miles = settledReading(fields, 'miles')?.value;
  const year = settledReading(fields, 'year')?.value;
  const source = [seen.site, heading].filter(Boolean).join(': ').slice(0, 200);
  const comp = compSchema.safeParse({
    kind: 'asking',
    price,
    ...(miles !== undefined && { miles }),
    ...(year !== undefined && { year }),
    date: seen.date,
    ...(source !== '' && { source }),
  });
  return comp.success ? comp.data : null;
}
