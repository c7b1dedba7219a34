import type { Term } from './term.ts';

/** What the Plan screen shows. */
export const PLAN_TERMS = {
  purse: {
    term: 'Purse',
    meaning: 'What you can bid with: cash, the floor line and places on the lot.',
    from: 'What you count and enter on the Plan screen.',
  },
  'cash-to-bid': {
    term: 'Cash to bid with',
    meaning: 'The cash you counted, less what you owe for cars won since.',
    from: 'The purse, and the results and bills entered after it was counted.',
  },
  'line-left': {
    term: 'Left on the line',
    meaning:
      'What the lender still advances, less won cars that it will pay. Only titles that the lender takes use it.',
    from: 'The purse, and the results entered after it was counted.',
  },
  'places-on-lot': {
    term: 'Places on the lot',
    meaning: 'How many more cars you have room for. Each won car takes one.',
    from: 'The purse, less the cars won since.',
  },
  'purse-until': {
    term: 'For lots that close until',
    meaning: 'The last day of the purse. Lots that close later are outside the plan.',
    from: 'The purse.',
  },
  'plan-profit': {
    term: 'Expected profit of the plan',
    meaning: 'What the planned bids earn on average. Some win and most lose.',
    from: 'The chance to win each lot, and its profit at the price it would sell for.',
  },
  'cars-expected': {
    term: 'Cars expected',
    meaning: 'How many of the planned bids win on average.',
    from: 'The chances to win, added up.',
  },
  'worth-of-cash': {
    term: 'One more $1,000 is worth',
    meaning:
      'How much the expected profit grows with $1,000 more of your own cash. It is zero while cash is not short.',
    from: 'The plan made again with that cash.',
  },
  'worth-of-place': {
    term: 'One more place is worth',
    meaning: 'How much the expected profit grows with room for one more car. It is zero while places are not short.',
    from: 'The plan made again with that place.',
  },
  'prices-higher': {
    term: 'If prices run 5% higher',
    meaning: 'The expected profit when cars sell for 5% more than your closings say, or 5% less.',
    from: 'The plan made again for such prices.',
  },
  'price-level': {
    term: 'Prices this weekend',
    meaning: 'How high the cars sell this time against the usual.',
    from: 'The closings of this purse’s time that have a result.',
  },
  'chance-to-win': {
    term: 'Chance',
    meaning: 'How likely the bid is to win. Few closings behind it mean that it can be far off.',
    from: 'How your past closings ended, and what the price says now.',
  },
  takes: {
    term: 'Takes',
    meaning: 'The cash and the floor line that the car uses if the planned bid wins.',
    from: 'The planned bid with fees and transport, and what the lender advances on its title.',
  },
} satisfies Record<string, Term>;
