import type { Pair } from '../text/pair.ts';
import type { PageRecord } from './page-json.ts';

/** What no key names in a way that could be relied on: how the bidding began, what somebody else may bid, counts. */
const NOT_SAID =
  /\b(?:start\w*|open\w*|reserve\w*|max\w*|limit|fee|fees|count|total|retail|estimate|sold|prior|previous|format|type|id)\b/;

/**
 * The values of a record as the pairs that they would be on screen: `highBidCents` is the high bid in cents. Amounts that do not
 * say that they are cents are left out, because they may be either.
 */
export function recordPairs({ values }: PageRecord): readonly Pair[] {
  const pairs: Pair[] = [];
  for (const [key, { name, value }] of values) {
    const words = wordsOf(name);
    const inCents = /\b(?:cents|minor)\b/.test(words);
    const label = words
      .replace(/\b(?:cents|minor|usd|value|text|label)\b/g, ' ')
      .replace(/\s+/g, ' ')
      .trim();
    if (label === '' || NOT_SAID.test(label) || /(?:unit|uom|ms|utc)$/.test(key)) continue;
    if (inCents && !/^\d{3,11}$/.test(String(value))) continue;
    const shown = inCents ? `$${(Number(value) / 100).toFixed(2)}` : String(value);
    if (!inCents && MONEY.test(label)) continue;
    pairs.push({ label, value: shown, after: '', node: null, how: 'data', prose: false, from: 'structured-data' });
  }
  return pairs;
}

const MONEY = /\b(?:bid|price|ask|hi|high|now|amount|step|increment|buy|next)\b/;

/** `minNextCents` in words. */
const wordsOf = (name: string): string =>
  name
    .replace(/([a-z\d])([A-Z])/g, '$1 $2')
    .replace(/[._-]+/g, ' ')
    .toLowerCase()
    .trim();
