import { plainWords } from '../../text/plain-words.ts';
import type { BankLine } from './bank-line.ts';

/** What banks say of any line; it names nobody. Common practice, no source. */
const BANK_WORDS = new Set(
  (
    'ach achs eft wire wires transfer transfers xfer trf payment payments pmt pmts pymt paymt pay paid check checks chk ck draft ' +
    'debit debits credit credits dr cr deposit deposits dep withdrawal withdrawals wd fee fees charge charges service svc ' +
    'online mobile web internet electronic elec bill billpay autopay recurring external internal domestic incoming outgoing ' +
    'out in to from the and for of by via at on pos purchase card visa ref reference refnum conf confirmation id no nr num number trace ' +
    'trn tran transaction ccd ppd ctx tel des desc description indn orig co entry sec vendor merchant acct account ending ' +
    'inc llc ltd corp company group usa us refund refunds return returned reversal reversed nsf unpaid stop memo inv invoice invoices ' +
    'lot lots customer remote branch teller misc other item items batch net total usd jan feb mar apr may jun jul aug sep oct nov dec'
  ).split(' '),
);

/** Our own money that came back unpaid, or theirs; a refund says so otherwise. */
const RETURNED =
  /\b(?:returned|return item|rtn|rtd|ret(?:urn)? (?:check|chk|ck|item|ach|pmt|payment|dep\w*)|nsf|insufficient|uncollected|unpaid|reversal|reversed|charge ?back|bounced|stop(?:ped)? pay\w*|dishonou?red)\b/;

/** What a line says, put apart: whom it names, which numbers it has, and whether it is money that came back unpaid. */
export interface LineWords {
  readonly names: readonly string[];
  readonly numbers: ReadonlySet<string>;
  readonly returned: boolean;
}

/** Words that may name somebody: without figures, marks and what banks say of any line. */
export const namesIn = (text: string): string[] =>
  plainWords(text)
    .split(' ')
    .filter((word) => word.length >= 3 && !/\d/.test(word) && !BANK_WORDS.has(word));

/** A number of a check or a transfer without what is written differently: case, marks, leading zeros. */
export const tidyNumber = (number: string): string =>
  number
    .replace(/[^\p{L}\p{N}]+/gu, '')
    .toUpperCase()
    .replace(/^(?:CHECK|CHK|CK|NO)(?=\d)/, '')
    .replace(/^0+(?=.)/, '');

/** Numbers are told apart from days and small counts by their length. */
const SHORTEST_NUMBER = 3;

export function lineWords({ text, check }: Pick<BankLine, 'text' | 'check'>): LineWords {
  const tokens = text.split(/[\s,;:()*]+/).flatMap((token) => [token, ...token.split(/[#/]+/)]);
  const numbers = tokens.map(tidyNumber).filter((token) => token.length >= SHORTEST_NUMBER && /\d/.test(token));
  return {
    names: namesIn(text),
    numbers: new Set([...(check === undefined ? [] : [tidyNumber(check)]), ...numbers]),
    returned: RETURNED.test(plainWords(text)),
  };
}
