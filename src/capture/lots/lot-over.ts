import type { Candidates } from '../draft/candidates.ts';
import type { PageNote } from '../draft/draft-lot.ts';
import { shorten } from '../text/clean-text.ts';
import type { Line } from '../text/lines.ts';

const NOUN = '(?:lot|unit|vehicle|item|listing|auction|sale|bidding|bid)';
const END =
  '(?:withdrawn|cancell?ed|removed|closed|ended|over|finished|sold|no longer (?:available|active|for sale|on sale|open))';
const SENTENCE = new RegExp(
  String.raw`^(?:sorry,? )?(?:(?:this|the) ${NOUN}|bidding)(?: (?:on|for) this ${NOUN})? (?:has been|was|is|has) (?:now |already )?${END}\b`,
  'i',
);
const BADGE = new RegExp(
  `^(?:${NOUN} )?(?:withdrawn|cancell?ed|sold|closed|ended|not sold|no sale|no longer available)[.!]?$`,
  'i',
);
// Where one may choose between them, they say nothing of this lot.
const CHOICE = /^(?:open|active|live|upcoming|all|any|running|available)[.!]?$/i;

/** The line that says that this lot is no longer for sale; null when it may still be. */
export function lineThatItIsOver(lines: readonly Line[]): Line | null {
  const said = lines.find((line) => line.text.length <= 160 && SENTENCE.test(line.text));
  if (said !== undefined) return said;
  const badges = lines.filter((line) => BADGE.test(line.text));
  const words = new Set(badges.map((line) => line.text.toLowerCase()));
  return words.size === 1 && !lines.some((line) => CHOICE.test(line.text)) ? (badges[0] ?? null) : null;
}

/** What was bid or asked no longer holds for a lot that is over, and its close has nothing to call for. */
export function dropWhatIsOver(lines: readonly Line[], into: Candidates): readonly PageNote[] {
  const over = lineThatItIsOver(lines);
  const fields = ['priceNow', 'nextBid', 'increment', 'buyNow', 'close'] as const;
  if (over === null || fields.every((field) => into.of(field).length === 0)) return [];
  for (const field of fields) into.drop(field);
  const message = `The page says “${shorten(over.text, 80)}”, so no price and no closing time was read from it.`;
  return [{ reason: 'lot-over', message }];
}
