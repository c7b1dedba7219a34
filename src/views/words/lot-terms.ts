import { inSetup, type Term } from './term.ts';

/** What stands on the list and at the top of a worksheet. */
export const LOT_TERMS = {
  'max-bid': {
    term: 'Max bid',
    meaning:
      'The most you can bid and still meet your rules: your minimum profit on average, and a chance of losing money under your limit. “Don’t bid” means that no price meets them.',
    from: 'Expected retail, less every cost up to the sale of the car, less the profit you require, rounded down to a bid increment.',
    change: inSetup('rules', 'Money rules'),
  },
  'planned-bid': {
    term: 'Planned bid',
    meaning:
      'What to bid on the lot so that your cash goes where it earns most: your max bid, or less when the cash is worth more in lots that close later. “Leave out” means that it is. It is an estimate, not advice.',
    from: 'The max bids of all lots in your purse’s time, your purse, and how your closings ended so far. It is made anew after each change.',
  },
  headroom: {
    term: 'Headroom',
    meaning:
      'The room between the price now and your max bid. Once the price is higher, it says how much over max it is.',
    from: 'Max bid less price now.',
  },
  'price-now': {
    term: 'Price now',
    meaning: 'The current bid when the page was last read or you last typed it. Not the next bid.',
    from: 'The page, the file or you. The history says which, and when.',
  },
  proxy: {
    term: 'Proxy',
    meaning: 'The bid you left with the venue, which bids for you up to that price. Headroom never bids.',
    from: 'You: press “I placed …” after you have placed it at the venue.',
  },
  bid: {
    term: 'Bid',
    meaning:
      'What you have placed and how it stands: no proxy yet, placed, outbid, placed over max, pending, or ended. “Check” means that a bid needs checking.',
    from: 'The proxies and live bids you recorded, the prices seen since, your max bid and the close.',
  },
  close: {
    term: 'Close',
    meaning:
      'When bidding on the lot ends, in store time. A question mark means that the stated time can be read in two ways.',
    from: 'The time that the page, the file or you stated, with its time zone. Without one, the zone of the venue.',
    change: inSetup('store', 'Store'),
  },
  increment: {
    term: 'Increment',
    meaning: 'The step between one bid and the next. A max bid always lands on an increment.',
    from: 'The lot’s own increment, otherwise the venue’s.',
    change: inSetup('venues', 'Venues'),
  },
  result: {
    term: 'Result',
    meaning: 'How a lot ended: won, lost, not sold, pending, withdrawn, or unknown.',
    from: 'You, at the close or later. Each is compared with your max bid at that time.',
  },
} satisfies Record<string, Term>;
