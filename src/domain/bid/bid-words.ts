import { type Cents, cents } from '../money/cents.ts';
import { formatMoney } from '../money/format-money.ts';
import { sayEnd } from '../sale/result-words.ts';
import type { BidState, Ended, NoBid, OverMax, Pending, Standing, Than, WithBid } from './bid-state.ts';
import { person } from './person-words.ts';
import type { Room } from './room.ts';

/** The state of a bid, short enough for a row: "Placed $12,000", "Outbid at $10,600", "Won at $10,900". No full stop. */
export function bidWords(state: BidState): string {
  const words = plainWords(state);
  return state.is !== 'ended' && state.mayHaveClosed ? `${words}. May have closed` : words;
}

function plainWords(state: BidState): string {
  switch (state.is) {
    case 'none':
      return noBidWords(state);
    case 'standing':
      return standingWords(state);
    case 'outbid':
      return `Outbid at ${formatMoney(state.at)}${outbidRoom(state)}${state.price?.fell ? ', check price' : ''}`;
    case 'over-max':
      return overMaxWords(state);
    case 'pending':
      return pendingWords(state);
    case 'ended':
      return endedWords(state);
  }
}

/** What goes beside the state where there is room: what is known of the price. Empty where that says nothing. */
export function priceWords(state: BidState): string {
  if (state.is === 'none') return state.price === undefined && !state.sealed ? 'price unknown' : '';
  if (state.is !== 'standing' || state.priceBefore || state.ours !== undefined) return '';
  const { price, bid } = state;
  if (price === undefined) return 'price unknown';
  return price.seenAt < bid.at ? 'no price seen since' : '';
}

function noBidWords({ room, own, than }: NoBid): string {
  switch (room.is) {
    case 'over':
      return `Price ${formatMoney(room.by)} over ${than}`;
    case 'at':
      return `Price is at ${than}`;
    case 'next-over':
      return `Next bid ${formatMoney(room.next)} is over ${than}`;
    case 'no-price':
      return than === 'plan' ? LEFT_OUT : 'Don’t bid';
    default:
  }
  return own.withdrawn?.cents === undefined ? 'No proxy yet' : `No proxy: withdrawn by ${person(own.withdrawn.by)}`;
}

function standingWords(state: Standing): string {
  const { bid, ours, own, noMaxBid, price, priceBefore } = state;
  const money = formatMoney(bid.cents);
  if (priceBefore && price !== undefined)
    return `Placed ${money}, price was ${formatMoney(price.cents)} before it: check`;
  const placed = `${placedWord(state)} ${money}`;
  const more = [
    ours === true && 'high bidder',
    bid.how === 'live' && own.proxy === undefined && own.withdrawn !== undefined && 'proxy withdrawn',
    noMaxBid && 'no max bid',
    price?.fell !== undefined && 'check price',
  ].filter(Boolean);
  const same = ours === 'unknown' ? '. Price is the same: it may be yours or not' : '';
  return [placed, ...more].join(', ') + same;
}

const placedWord = ({ bid }: WithBid): string => (bid.how === 'live' ? 'Bid' : 'Placed');

/** The plan has better uses for the cash. */
const LEFT_OUT = 'Left out of the plan';

function outbidRoom({ room, than }: { readonly room: Room; readonly than: Than }): string {
  switch (room.is) {
    case 'left':
      return '';
    case 'over':
      return `, above ${than}: don’t chase`;
    case 'at':
      return `, price is at ${than}`;
    case 'next-over':
      return `, next bid ${formatMoney(room.next)} is over ${than}`;
    case 'no-price':
      return than === 'plan' ? ', left out of the plan' : ', don’t bid';
    case 'unknown':
      return ', no max bid';
  }
}

function overMaxWords(state: OverMax): string {
  const { bid, by, maxBid, price, sealed, than } = state;
  const what = sealed ? 'Sealed bid' : placedWord(state);
  const none = than === 'plan' ? 'left out of the plan' : 'don’t bid';
  const over = by === null ? none : `${formatMoney(by)} over ${than}`;
  const past = sealed || maxBid === null ? 0 : (price?.cents ?? 0) - maxBid;
  return `${what} ${formatMoney(bid.cents)}, ${over}${past > 0 ? `. Price ${formatMoney(cents(past))} over ${than}` : ''}`;
}

function pendingWords({ bid, because, price }: Pending): string {
  const money = formatMoney(bid.cents);
  switch (because) {
    case 'sealed':
      return `Sealed bid ${money}${bid.confirmedAt !== undefined ? ', received' : ''}`;
    case 'not-confirmed':
      return `Bid ${money}, not confirmed`;
    case 'price-below':
      return `Bid ${money}, but price is ${formatMoney(price?.cents ?? (0 as Cents))}`;
  }
}

function endedWords({ result, otherResult, canceled, price }: Ended): string {
  if (result === undefined) {
    const last = price === undefined ? '' : `. Last price ${formatMoney(price.cents)}`;
    return `Closed, no result yet${last}`;
  }
  if (otherResult !== undefined) return 'Two results noted';
  return `${sayEnd(result.result, canceled)}${result.early === true ? ', ended early' : ''}`;
}

/** The same as a sentence of a notice: "No proxy is placed yet." */
export function bidSentence(state: BidState): string {
  const words = bidWords(state);
  return words === 'No proxy yet' ? 'No proxy is placed yet.' : `${words}.`;
}
