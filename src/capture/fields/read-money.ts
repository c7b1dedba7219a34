import type { Cents } from '../../domain/money/cents.ts';
import type { DecimalMark } from '../../domain/money/written-number.ts';
import { ancestorsOf, type PageNode } from '../dom/page-tree.ts';
import type { Candidates } from '../draft/candidates.ts';
import type { PageNote, Sure } from '../draft/draft-lot.ts';
import { labelKey, type Meaning } from '../text/labels.ts';
import type { Line } from '../text/lines.ts';
import { type Pair, pairText } from '../text/pair.ts';
import { AMOUNT, amountIn, amountsIn, saysOtherCurrency } from './amounts.ts';

type MoneyField = 'priceNow' | 'nextBid' | 'increment' | 'buyNow';

/** A price from structured data, which says an amount but not whether it is a bid, an asking price or a fixed one. */
export interface OfferPrice {
  readonly cents: Cents;
  readonly text: string;
}

export interface MoneySources {
  readonly pairs: readonly Pair[];
  readonly lines: readonly Line[];
  readonly offers: readonly OfferPrice[];
  readonly decimal: DecimalMark | undefined;
}

/**
 * Sorts the amounts of a lot into the bid that stands, the next bid, the increment and the price to buy at once. An amount
 * that nothing names is none of these.
 */
export function readMoney(sources: MoneySources, into: Candidates): readonly PageNote[] {
  const { pairs, lines, decimal } = sources;
  if (lines.some((line) => saysOtherCurrency(line.text))) return [OTHER_CURRENCY_NOTE];
  let foreign = false;
  for (const pair of pairs) {
    const field = MONEY_FIELDS[pair.meaning];
    if (field === undefined) continue;
    const amount = amountIn(`${pair.value.split('\n', 2).join(' ')} ${currencyIn(pair.after)}`.trim(), decimal);
    if (amount.kind === 'other-currency') foreign = true;
    // Nothing is bid yet, or the figure has not arrived: either way no price.
    if (amount.kind !== 'one' || amount.cents === 0) continue;
    const sure = sureOf(pair, amount.signed);
    into.add(field, { value: amount.cents, from: pair.from, text: pairText(pair), sure }, pair.node);
  }
  for (const line of lines) readPhrase(line, decimal, into);
  if (into.of('priceNow').length === 0) readPlainPrice(sources, into);
  readOffers(sources, into);
  // Before the first bid no bid stands, whatever the page calls the opening price.
  if (hasNoBids(pairs, lines)) into.drop('priceNow');
  return foreign && into.of('priceNow').length === 0 ? [OTHER_CURRENCY_NOTE] : [];
}

const OTHER_CURRENCY_NOTE: PageNote = {
  reason: 'other-currency',
  message: 'The amounts on this page are not in US dollars, so none was used. Convert the price and type it in.',
};

const MONEY_FIELDS: Partial<Record<Meaning, MoneyField>> = {
  priceNow: 'priceNow',
  nextBid: 'nextBid',
  increment: 'increment',
  buyNow: 'buyNow',
};

const currencyIn = (after: string): string => /^(?:USD|US ?\$|\$|CAD|C\$|MXN|EUR|€|£)/i.exec(after)?.[0] ?? '';

function sureOf(pair: Pair, signed: boolean): Sure {
  if (pair.prose) return 'doubtful';
  if (!signed) return pair.how === 'run-on' || pair.how === 'trailing' ? 'doubtful' : 'likely';
  return pair.how === 'trailing' ? 'likely' : 'certain';
}

const PHRASES: readonly { readonly field: MoneyField; readonly pattern: RegExp }[] = [
  // "A wrong letter can cost $1,000 or more" asks for no bid.
  {
    field: 'nextBid',
    pattern: new RegExp(
      `(?:^|\\b(?:bids?|offers?|enter|place|min(?:imum)?)\\b[^.!?$]{0,30}?)(${AMOUNT}) or (?:more|higher|above|greater)\\b`,
      'iu',
    ),
  },
  { field: 'nextBid', pattern: new RegExp(`\\bnext bid(?: is|:)? (${AMOUNT})`, 'iu') },
  { field: 'nextBid', pattern: new RegExp(`\\bbid (?:at least|a minimum of) (${AMOUNT})`, 'iu') },
  {
    field: 'priceNow',
    pattern: new RegExp(
      `\\b(?:current|high|highest|leading|standing|top) bid (?:is |of |at |stands at |is now )(${AMOUNT})`,
      'iu',
    ),
  },
  { field: 'increment', pattern: new RegExp(`\\b(?:increments?|steps) of (${AMOUNT})`, 'iu') },
];
const BID_BUTTON = new RegExp(
  `^(?:place |quick |submit )?(?:a |your |my )?bid(?: now)?:? ?(?:at |of )?(${AMOUNT})`,
  'iu',
);

/** Amounts named by a phrase, and the bid that a button would place. */
function readPhrase(line: Line, decimal: DecimalMark | undefined, into: Candidates): void {
  if (line.text.length > 1000 || !/\d/.test(line.text)) return;
  const rules = isOnButton(line.element) ? [{ field: 'nextBid' as const, pattern: BID_BUTTON }, ...PHRASES] : PHRASES;
  for (const { field, pattern } of rules) {
    const token = pattern.exec(line.text)?.[1];
    const value = token === undefined ? undefined : amountsIn(token, decimal)[0];
    if (value === undefined) continue;
    const sure = line.prose && field === 'priceNow' ? 'doubtful' : 'likely';
    into.add(field, { value, from: 'page-text', text: line.text, sure }, line.element);
  }
}

function isOnButton(node: PageNode | null): boolean {
  if (node === null) return false;
  return [node, ...ancestorsOf(node)].some(
    (up) =>
      up.kind === 'element' && (up.tag === 'button' || up.tag === 'input' || up.attributes.get('role') === 'button'),
  );
}

/** "Price" or "Bid" alone: the price now, unless other words on the page make it unclear which price. */
function readPlainPrice({ pairs, decimal }: MoneySources, into: Candidates): void {
  const isAuction = pairs.some((pair) => AUCTION_MEANINGS.has(pair.meaning) || /\b(?:bid|reserve)\b/i.test(pair.label));
  for (const pair of pairs) {
    if (pair.meaning !== 'price' || pair.prose || isOnButton(pair.node)) continue;
    const amount = amountIn(pair.value.split('\n', 1)[0] ?? '', decimal);
    if (
      amount.kind !== 'one' ||
      amount.cents === 0 ||
      (!amount.signed && pair.how !== 'cell' && pair.how !== 'attribute')
    )
      continue;
    const isBid = labelKey(pair.label) === 'bid';
    const sure: Sure = isBid || !isAuction ? 'likely' : 'doubtful';
    into.add('priceNow', { value: amount.cents, from: pair.from, text: pairText(pair), sure }, pair.node);
  }
}

const AUCTION_MEANINGS: ReadonlySet<Meaning> = new Set(['priceNow', 'nextBid', 'increment', 'closes-at', 'time-left']);

function readOffers({ offers, lines, decimal }: MoneySources, into: Candidates): void {
  const fixed = new Set(into.of('buyNow').map((reading) => reading.value));
  const current = new Set(into.of('priceNow').map((reading) => reading.value));
  for (const offer of offers) {
    if (fixed.has(offer.cents)) {
      into.add('buyNow', { value: offer.cents, from: 'structured-data', text: offer.text, sure: 'likely' });
      continue;
    }
    const shown = current.has(offer.cents) || lines.some((line) => amountsIn(line.text, decimal).includes(offer.cents));
    // Markup is often older than the page, so a visible bid that differs overrides it.
    const sure: Sure = shown && (current.size === 0 || current.has(offer.cents)) ? 'likely' : 'doubtful';
    into.add('priceNow', { value: offer.cents, from: 'structured-data', text: offer.text, sure });
  }
}

const NO_BIDS = /^(?:(?:there are )?(?:no|0|zero) bids?(?: yet| so far| placed)?|be the first to bid)\b/i;

function hasNoBids(pairs: readonly Pair[], lines: readonly Line[]): boolean {
  const counted = pairs.some(
    (pair) => /^(?:bids|bid count|number of bids)$/.test(labelKey(pair.label)) && /^0\b/.test(pair.value),
  );
  return counted || lines.some((line) => line.text.split(/[|•·()]/).some((part) => NO_BIDS.test(part.trim())));
}
