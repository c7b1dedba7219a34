import type { Cents } from '../../domain/money/cents.ts';
import type { Candidates } from '../draft/candidates.ts';
import type { PageNote } from '../draft/draft-lot.ts';
import type { MoneyRole } from '../roles/money-roles.ts';
import type { Line } from '../text/lines.ts';
import type { Pair } from '../text/pair.ts';
import type { FieldReader, LotSource } from './field-reader.ts';
import { amountsSaid, type SaidAmount } from './said-amounts.ts';

type MoneyField = 'priceNow' | 'nextBid' | 'increment' | 'buyNow';

/**
 * Sorts the amounts of a lot into the bid that stands, the next bid, the increment and the price to buy at once. An amount
 * that nothing names is the price only where it is the only one.
 */
export const readMoney: FieldReader = (source, into) => {
  if (source.otherCurrency) {
    into.note(OTHER_CURRENCY_NOTE);
    return;
  }
  const said = amountsSaid(source);
  let foreign = false;
  for (const one of said) {
    const field = fieldOf(one, source);
    if (field === null || one.token.cents === 0) continue;
    if (one.token.foreign) {
      foreign = true;
      continue;
    }
    into.add(
      field.name,
      { value: one.token.cents, from: one.from, text: one.text, score: scoreOf(one, field.weight), prose: one.prose },
      one.node,
    );
  }
  if (into.of('priceNow').length === 0 && !foreign) loneAmount(said, source, into);
  barePress(said, into);
  weighTogether(into);
  // Before the first bid no bid stands, whatever the page calls the opening price.
  if (hasNoBids(source)) openingAsNext(said, into);
  if (foreign && into.of('priceNow').length === 0) into.note(OTHER_CURRENCY_NOTE);
};

const OTHER_CURRENCY_NOTE: PageNote = {
  reason: 'other-currency',
  message: 'The amounts on this page are not in US dollars, so none was taken. Convert the price and type it in.',
};

const FIELDS: Partial<Record<MoneyRole, MoneyField>> = {
  priceNow: 'priceNow',
  nextBid: 'nextBid',
  increment: 'increment',
  buyNow: 'buyNow',
};

function fieldOf(one: SaidAmount, source: LotSource): { readonly name: MoneyField; readonly weight: number } | null {
  // What a button says it would bid is the next bid.
  if (
    one.button &&
    (one.role === null || one.role === 'priceNow' || one.role === 'price' || one.role === 'increment')
  ) {
    return /\bbid\b|\braise to\b|offer|enchérir|miser|ofertar|bieten/i.test(one.text)
      ? { name: 'nextBid', weight: 0.85 }
      : null;
  }
  if (one.role === 'price')
    return { name: 'priceNow', weight: isAuction(source) && !/bid|offer/i.test(one.text) ? 0.5 : 0.75 };
  const name = one.role === null ? undefined : FIELDS[one.role];
  return name === undefined ? null : { name, weight: one.weight };
}

const scoreOf = ({ token, prose }: SaidAmount, weight: number): number =>
  Math.min(0.97, weight) * (token.rough ? 0.5 : 1) * (prose ? 0.92 : 1);

const AUCTION = /\b(?:bid|bids|bidding|reserve|auction|closes|ends)\b/i;
const isAuction = ({ pairs }: LotSource): boolean => pairs.some((pair) => AUCTION.test(pair.label));

/** The only amount of a card that nothing names is its price; on a page of its own it may be anything. */
function loneAmount(said: readonly SaidAmount[], { extent }: LotSource, into: Candidates): void {
  const unnamed = said.filter(
    (one) => one.role === null && one.token.signed && !one.token.foreign && one.token.cents >= 100_00,
  );
  const values = new Set(unnamed.map((one) => one.token.cents));
  const [first] = unnamed;
  if (first === undefined || values.size !== 1 || first.button) return;
  const score = (extent === 'card' ? 0.68 : 0.42) * (first.token.rough ? 0.5 : 1) * (first.prose ? 0.7 : 1);
  into.add('priceNow', { value: first.token.cents, from: first.from, text: first.text, score }, first.node);
}

/** A button that shows nothing but an amount a little above the bid that stands is what it would bid. */
function barePress(said: readonly SaidAmount[], into: Candidates): void {
  const price = into.best('priceNow');
  if (price === undefined || into.of('nextBid').length > 0) return;
  const pressed = said.filter(
    (one) =>
      one.button && one.role === null && one.token.text.length >= one.text.trim().length - 1 && !one.token.foreign,
  );
  const [first] = pressed;
  if (first === undefined || new Set(pressed.map((one) => one.token.cents)).size > 1) return;
  const ahead = first.token.cents - price.value;
  if (ahead <= 0 || ahead > price.value / 4) return;
  into.add('nextBid', { value: first.token.cents, from: first.from, text: first.text, score: 0.66 }, first.node);
}

/** The price now, the step and the next bid hold each other up where one is the sum of the two others. */
function weighTogether(into: Candidates): void {
  const [price, next, step] = [into.best('priceNow'), into.best('nextBid'), into.best('increment')];
  if (price === undefined || next === undefined) return;
  const ahead = next.value - price.value;
  if (step !== undefined && ahead === step.value) {
    for (const [name, one] of [
      ['priceNow', price],
      ['nextBid', next],
      ['increment', step],
    ] as const) {
      into.add(name, { ...one, score: Math.min(1, one.score + 0.1) });
    }
  } else if (ahead <= 0) {
    // Two figures the wrong way round: neither can be relied on.
    into.doubt('nextBid', 0.45);
    if (price.score < 0.9) into.doubt('priceNow', 0.5);
  }
}

const NO_BIDS =
  /^(?:(?:there are |still )?(?:no|0|zero|keine?|sin|aucune?) (?:bids?|offers?|pujas?|ofertas?|offres?|enchères?|mises?|gebote)(?: yet| so far| placed| received)?|be the first to bid|not opened(?: yet)?|bidding has not (?:opened|started|begun))\b/i;

function hasNoBids({ pairs, lines }: LotSource): boolean {
  const counted = pairs.some(
    (pair: Pair) =>
      /^(?:bids|bid count|number of bids|# of bids)$/i.test(pair.label.trim()) && /^0\b|^none\b/i.test(pair.value),
  );
  const none = pairs.some(
    (pair) =>
      /\b(?:bid|offer)$/i.test(pair.label.replace(/\s*\([^)]*\):?$|\s*:$/, '')) &&
      (NO_BIDS.test(pair.value) || /^\$?0(?:\.00)?(?!\d|[.,]\d)/.test(pair.value)),
  );
  return (
    counted ||
    none ||
    lines.some((line: Line) => line.text.split(/[|•·()]|\. /).some((part) => NO_BIDS.test(part.trim())))
  );
}

/** Where nothing is bid yet, what the bidding opens at is the least that can be bid. */
function openingAsNext(said: readonly SaidAmount[], into: Candidates): void {
  into.drop('priceNow');
  const opening = said.filter(
    (one) =>
      /\b(?:start\w*|open\w*|first|minimum)\b/i.test(one.text) &&
      one.role === 'other' &&
      !one.token.foreign &&
      one.token.cents > 0,
  );
  const values = new Set(opening.map((one) => one.token.cents));
  const [first] = opening;
  if (first !== undefined && values.size === 1 && into.of('nextBid').length === 0) {
    into.add('nextBid', { value: first.token.cents, from: first.from, text: first.text, score: 0.62 }, first.node);
  }
}

const PAGE_CURRENCY =
  /\b(?:prices?|bids?|amounts?|currency|figures|money|montants?|prix|mises|precios|importes|beträge)\b[^.\n]{0,40}(?<!\p{L})(?:CAD|Canadian (?:dollars?|funds)|dollars canadiens|MXN|Mexican pesos?|pesos|EUR|euros?|AUD|Australian dollars?)(?!\p{L})/iu;

/** Whether a line says that the dollars of this page are not US dollars. */
export const saysOtherCurrency = (text: string): boolean => text.length <= 300 && PAGE_CURRENCY.test(text);

/** A price from structured data, which says an amount but not whether it is a bid, an asking price or a fixed one. */
export interface OfferPrice {
  readonly cents: Cents;
  readonly text: string;
}

/** Prices in markup: what the visible page calls the same amount is what they are. */
export function readOffers(offers: readonly OfferPrice[], source: LotSource, into: Candidates): void {
  const fixed = new Set(into.of('buyNow').map((reading) => reading.value));
  const current = new Set(into.of('priceNow').map((reading) => reading.value));
  const amounts = amountsSaid(source);
  for (const { cents, text } of offers) {
    if (fixed.has(cents)) {
      into.add('buyNow', { value: cents, from: 'structured-data', text, score: 0.7 });
      continue;
    }
    const other = amounts.some(
      (one) => one.token.cents === cents && one.role !== null && one.role !== 'priceNow' && one.role !== 'price',
    );
    const shown = current.has(cents) || amounts.some((one) => one.token.cents === cents && one.role === null);
    const nothing = current.size === 0 && !other;
    const score = other ? 0.25 : shown ? 0.8 : nothing && source.extent === 'card' ? 0.7 : nothing ? 0.6 : 0.35;
    into.add('priceNow', { value: cents, from: 'structured-data', text, score });
  }
}
