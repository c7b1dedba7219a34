import type { Cents } from '../money/cents.ts';
import { parseMoney } from '../money/parse-money.ts';
import { type Outcome, ok, refuse } from '../outcome.ts';
import type { Ending, Result } from './result.ts';

/** A result as it was typed, and how it came about where that was typed too. */
export interface TypedResult {
  readonly result: Result;
  readonly by?: 'proxy' | 'live';
}

/** The keys of the quick line, for the sheet beside it. */
export const RESULT_KEYS: readonly { readonly key: string; readonly ended: Ending; readonly example: string }[] = [
  { key: 'w', ended: 'won', example: 'w 12500' },
  { key: 'l', ended: 'lost', example: 'l 13000, or l alone when the price is unknown' },
  { key: 'n', ended: 'not-sold', example: 'n, or n 11800 with the high bid' },
  { key: 'p', ended: 'pending', example: 'p, or p 11800 with our bid' },
  { key: 'x', ended: 'withdrawn', example: 'x' },
  { key: 'u', ended: 'not-watched', example: 'u' },
];

const ENDINGS: readonly (readonly [words: RegExp, ended: Ending])[] = [
  [/^(?:w|won)$/, 'won'],
  [/^(?:l|lost)$/, 'lost'],
  [/^(?:n|ns|no ?-?sale|not ?-?sold|unsold)$/, 'not-sold'],
  [/^(?:p|pending|if)$/, 'pending'],
  [/^(?:x|withdrawn|pulled)$/, 'withdrawn'],
  [/^(?:u|unwatched|not ?-?watched|unknown)$/, 'not-watched'],
];
const LINE = /^(?<words>[a-z][a-z -]*?)[ :]*(?:at )?(?<amount>[-$(\d.].*?)?(?: ?(?<by>proxy|live))?$/;

/**
 * Reads one quick line: a letter or a word for how it ended, the amount where there is one, and `proxy` or `live` after it
 * where that is to be kept: "w 12500", "lost 13,000 live", "n", "won at 12.5k proxy". Nothing is guessed: what can't be read
 * is refused with what to type instead.
 */
export function readResult(text: string): Outcome<TypedResult> {
  const tidy = text.trim().toLowerCase().replace(/\s+/g, ' ');
  if (tidy === '') return refuse('empty', 'Type how it ended, such as w 12500 or l 13000.');
  if (/^[-$(\d.]/.test(tidy))
    return refuse(
      'no-ending',
      `Put how it ended before the amount: w ${tidy} if we won it, l ${tidy} if someone else did.`,
    );
  const parts = LINE.exec(tidy)?.groups;
  const words = parts?.words?.replace(/ ?at$/, '').trim() ?? '';
  const ended = ENDINGS.find(([pattern]) => pattern.test(words))?.[1];
  if (ended === undefined)
    return refuse(
      'no-ending',
      `“${text.trim()}” does not say how it ended. Begin with w, l, n, p, x or u: w 12500, l 13000, n.`,
    );
  const amount = parts?.amount === undefined ? undefined : readAmount(parts.amount);
  if (amount !== undefined && !amount.ok) return amount;
  const result = resultOf(ended, amount?.value);
  if (!result.ok) return result;
  const by = parts?.by;
  return ok({ result: result.value, ...(by === 'proxy' || by === 'live' ? { by } : {}) });
}

function readAmount(text: string): Outcome<Cents> {
  const amount = parseMoney(text);
  if (!amount.ok) return amount;
  return amount.value > 0 ? amount : refuse('not-positive', 'A price must be above $0. Leave it out if it is unknown.');
}

function resultOf(ended: Ending, amount: Cents | undefined): Outcome<Result> {
  switch (ended) {
    case 'won':
      if (amount === undefined) return refuse('won-at-what', 'Won at what hammer price? Type it after the w: w 12500.');
      return ok({ ended, hammerCents: amount });
    case 'lost':
      return ok(amount === undefined ? { ended } : { ended, hammerCents: amount });
    case 'not-sold':
      return ok(amount === undefined ? { ended } : { ended, highCents: amount });
    case 'pending':
      return ok(amount === undefined ? { ended } : { ended, bidCents: amount });
    default:
      if (amount !== undefined) return refuse('no-price', 'That ending has no price. Leave the amount out.');
      return ok({ ended });
  }
}
