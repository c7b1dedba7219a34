import type { InvoiceRole } from '../../domain/books/invoice/invoice-mapping.ts';
import { plainWords } from '../../domain/text/plain-words.ts';

/** What headings of invoices say, in the order in which they are tried; the first that fits names the column. */
const WORDS: readonly (readonly [InvoiceRole, RegExp])[] = [
  ['vin', /\b(?:vin|serial|vehicle id(?:entification)?|last (?:6|8|six|eight))\b/],
  [
    'number',
    /\b(?:invoice|inv|bill|document|doc|reference|ref|statement)\b(?!.*\bdate\b).*\b(?:no|nr|num|number|id)?\b|\bref\b/,
  ],
  ['lot', /\b(?:lot|run|stock|unit|item)\b(?!.*(?:price|amount|fee))/],
  ['date', /\b(?:date|day|sold on|posted|issued)\b/],
  ['words', /\b(?:descr\w*|charge type|type|line|details?|what|text|memo|narrative|activity|item name|for)\b/],
  ['payment', /\b(?:paid|payments?|received|remitted)\b/],
  ['credit', /\b(?:credits?|discount|rebate|adjustment)\b/],
  ['total', /\b(?:total|balance|open|amount due|net due|grand)\b/],
  ['hammer', /\b(?:hammer|sale price|sold price|purchase price|selling price|vehicle price|bid|price)\b(?!.*\bfee)/],
  ['transport', /\b(?:transport\w*|freight|ship\w*|haul\w*|delivery)\b/],
  ['amount', /^(?:charges?|billed|debits?|net|ext|extended|sum)$/],
  ['fee', /\b(?:fees?|pass|papers?|premium|charges?)\b/],
  ['amount', /\b(?:amount|amt|value|usd|dollars|sum|debit)\b/],
];

/** What a column is likely to hold, by its heading alone; null when it says nothing. */
export function guessRole(heading: string): InvoiceRole | null {
  const words = plainWords(heading);
  return WORDS.find(([, pattern]) => pattern.test(words))?.[0] ?? null;
}
