import { tellApart } from '../close/say-close.ts';
import { formatMoney } from '../money/format-money.ts';
import { sayResult } from '../sale/result-words.ts';
import type { Instant } from '../time/instant.ts';
import { sayClock, sayDate } from '../time/say-time.ts';
import { dateIn } from '../time/wall-clock.ts';
import type { Zone } from '../time/zone.ts';
import type { BidAsk } from './bid-ask.ts';
import { person, personFirst } from './person-words.ts';

/** A question in one or two sentences. @param zone the store's */
export function askWords(ask: BidAsk, zone: Zone): string {
  const money = formatMoney;
  switch (ask.ask) {
    case 'price-now':
      return `Price was ${ask.price === ask.bid ? 'already ' : ''}${money(ask.price)} before you placed. What is the price now?`;
    case 'which-price':
      return `Price was ${money(ask.was)}, now ${money(ask.now)}. Which is right?`;
    case 'high-bidder':
      return 'Does the venue show you as high bidder?';
    case 'cut-taken':
      return `Price was already above ${money(ask.bid)}. Did the venue take the cut?`;
    case 'raise-right':
      return `Price was already ${money(ask.price)}. Is ${money(ask.bid)} right?`;
    case 'went-in':
      return ask.price === undefined
        ? 'Did the bid go in?'
        : `Price ${money(ask.price)} is below your live bid. Did it go in?`;
    case 'live-stands':
      return ask.proxy === undefined
        ? `Your live bid of ${money(ask.bid)} still stands. Did the venue release it?`
        : `Your live bid of ${money(ask.bid)} still stands. Is ${money(ask.proxy)} right?`;
    case 'which-bid':
      return `${ask.bids.map(({ cents, by }) => `${money(cents)} by ${person(by)}`).join(' and ')} at the same time. Which stands?`;
    case 'replaced':
      return `${personFirst(ask.by)} placed ${money(ask.was)} before. Did you cut it to ${money(ask.now)}?`;
    case 'released':
      return `Did the venue release the bid at ${money(ask.price)}?`;
    case 'why-over':
      return 'Why over max?';
    case 'cut-or-accept':
      return ask.to === null ? 'Withdraw it or accept the risk?' : `Cut it to ${money(ask.to)} or accept the risk?`;
    case 'no-max-bid':
      return 'No max bid can be worked out. What will it retail for?';
    case 'sale-moved':
      return `The sale moved to ${sayDate(dateIn(zone, ask.to))}. Is your proxy still in?`;
    case 'which-close':
      return closeWords(ask, zone);
    case 'no-close':
      return 'When does it close?';
    case 'how-ended':
      return 'How did it end?';
    case 'was-in':
      return `Your ${ask.how === 'proxy' ? 'proxy' : 'bid'} was ${money(ask.bid)}. Was it in?`;
    case 'who-bid':
      return ask.bid === undefined
        ? 'No bid was noted. Who bid?'
        : `Your proxy was ${money(ask.bid)}. Who bid ${money(ask.amount)}?`;
    case 'ended-early':
      return `Closes at ${sayClock(ask.close, zone)}. Did it end early?`;
    case 'which-result': {
      const [one, other] = ask.results.map(sayResult);
      return `${one} or ${(other ?? '').toLowerCase()}?`;
    }
  }
}

function closeWords(
  { first, last, between }: { readonly first: Instant; readonly last: Instant; readonly between: boolean },
  zone: Zone,
): string {
  const times = `Closes ${tellApart([first, last], zone).join(' or ')}?`;
  return between ? `Has it closed? ${times}` : times;
}
