import { shorten } from '../dom/clean-text.ts';
import type { Candidates } from '../draft/candidates.ts';
import type { Line } from '../text/lines.ts';

const NOUN = '(?:lot|unit|vehicle|item|listing|auction|sale|bidding|bid|truck|van|car)';
const WITHDRAWN = '(?:withdrawn|pulled|cancell?ed|removed|no longer (?:available|active|for sale|on sale|open))';
const ENDED = '(?:closed|ended|over|finished|sold)';
const SENTENCE = new RegExp(
  String.raw`^(?:sorry,? )?(?:(?:this|the) ${NOUN}|bidding)(?: (?:on|for) this ${NOUN})? (?:has been|was|is|has) (?:now |already )?(?:(?<withdrawn>${WITHDRAWN})|${ENDED}\b(?! (?:by|until|at|with|in|to)))\b`,
  'i',
);
const BADGE = new RegExp(
  `^(?:${NOUN} )?(?:(?<withdrawn>withdrawn(?: by .{1,40})?|pulled|cancell?ed|no longer available)|sold|closed|ended|not sold|no sale|bidding is over|bidding over|sale over)[.!]?$`,
  'i',
);
const BEGINS = /^(?<withdrawn>withdrawn|retiré|retirado)\b(?: by| from| at | on |[.:,—–]|$)/i;
// Where one may choose between them, they say nothing of this lot.
const CHOICE = /^(?:open|active|live|upcoming|all|any|running|available)[.!]?$/i;

/** The line that says that this lot is no longer for sale, and whether it never was sold; null when it may still be. */
export function lineThatItIsOver(lines: readonly Line[]): { readonly line: Line; readonly withdrawn: boolean } | null {
  const isChoice = lines.some((line) => CHOICE.test(line.text));
  for (const line of lines) {
    if (line.text.length > 200) continue;
    const said = SENTENCE.exec(line.text) ?? (isChoice ? null : BEGINS.exec(line.text));
    if (said !== null) return { line, withdrawn: said.groups?.withdrawn !== undefined };
  }
  const badges = lines.filter((line) => BADGE.test(line.text));
  const words = new Set(badges.map((line) => line.text.toLowerCase()));
  const [first] = badges;
  if (first === undefined || words.size !== 1 || isChoice) return null;
  return { line: first, withdrawn: BADGE.exec(first.text)?.groups?.withdrawn !== undefined };
}

const SALE_OVER =
  /(?:^|[.!] )(?:this|the) (?:sale|auction) (?:is|has|was) (?:now |already )?(?:over|ended|closed|finished)\b(?! (?:by|until|at|with|in|to))/i;

/** The line outside all lots of a list that says that its whole sale is over; null when none does. */
export const lineThatSaleIsOver = (lines: readonly Line[]): Line | null =>
  lines.find(({ text }) => text.length <= 300 && SALE_OVER.test(text)) ?? null;

/** What was bid or asked no longer holds for a lot that is over; a lot that was withdrawn has no close either. */
export function dropWhatIsOver(lines: readonly Line[], extent: 'page' | 'card', into: Candidates): void {
  const over = lineThatItIsOver(lines);
  if (over === null) return;
  for (const field of ['priceNow', 'nextBid', 'increment', 'buyNow'] as const) into.drop(field);
  if (over.withdrawn) into.drop('close');
  if (extent === 'card') return;
  const said = `The page says “${shorten(over.line.text, 80)}”`;
  const message = over.withdrawn
    ? `${said}, so neither a price nor a closing time was taken from it.`
    : `${said}, so no price was taken from it: what it shows is no bid that can still be beaten.`;
  into.note({ reason: 'lot-over', message });
}
