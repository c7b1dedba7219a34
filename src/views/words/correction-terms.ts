import type { Term } from './term.ts';

const HERE = { href: '#/learn/corrections', label: 'Learn › Corrections' };

/** What the corrections from the dealer's own results are told in. */
export const CORRECTION_TERMS = {
  'own-results': {
    term: 'Correction from your own results',
    meaning: 'What your estimates missed in the past. Each one is off until you switch it on.',
    from: 'Your own results: what was expected beside what happened. It keeps the value it had when you switched it on.',
    change: HERE,
  },
  'won-cars': {
    term: 'Cars that you win',
    meaning:
      'You win most often what you rated too high. This is what won cars miss at the price where you would just win: mostly less than they miss on average.',
    from: 'A line through your won and sold cars: how cheap each was against your estimate, and what it left.',
    change: HERE,
  },
  'starting-assumption': {
    term: 'Starting assumption',
    meaning: 'What a figure is before there is a result of your own. Each result takes some of its weight.',
  },
  'case-half-life': {
    term: 'A case counts for half',
    meaning: 'Older results count for less: for half after so many days, for a quarter after twice as many.',
    change: HERE,
  },
  replay: {
    term: 'Replay',
    meaning:
      'Your past bids as they would have been with a correction on. Each week uses only what was recorded by then. Where nobody knows a price, it says so.',
    from: 'Your journal.',
    change: HERE,
  },
} satisfies Record<string, Term>;
