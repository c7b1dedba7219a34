import type { Term } from './term.ts';

/** What the Learn screen shows. */
export const LEARN_TERMS = {
  'inside-range': {
    term: 'Inside the range',
    meaning: 'How many of the cars you sold brought a price inside the range that you expected. It is meant to be 80%.',
    from: 'The range on the worksheet as the sale closed, and the sale price in the folder.',
  },
  'range-score': {
    term: 'Range score',
    meaning:
      'By how much your forecasts of retail missed, in dollars a car, with the range counted in. A range that is too wide costs as much as one that is too narrow. Smaller is better.',
    from: 'The continuous ranked probability score of each sold car, averaged.',
  },
  'retail-level': {
    term: 'Against expected retail',
    meaning:
      'What the cars that you won and sold brought on average, against what you expected. You win most where you expect too much, so some shortfall is normal even when your estimates are right over all lots.',
    from: 'Sale prices over expected retail, with a range that holds the truth in 19 of 20 cases.',
  },
  'brier-score': {
    term: 'Brier score',
    meaning:
      'How far the chances to win were from what happened. 0 is perfect; always saying the share you win scores the figure beside it.',
    from: 'The chance at the bid that you placed, and whether it won.',
  },
  'sales-pace': {
    term: 'Pace of sales',
    meaning:
      'How quickly cars sell against what you expected: 0.5 is half as quickly. Cars that are still here count with their days so far.',
    from: 'Each car’s days since it arrived, sold or not, against your days to sell when you bought it.',
  },
  'recon-ratio': {
    term: 'Recon against estimate',
    meaning: 'What a recon line costs in the end, as a share of what was estimated.',
    from: 'Bills in the folders, against the worksheet as the sale closed.',
  },
  'week-score': {
    term: 'Share of the best',
    meaning:
      'What the cars you won in a week were expected to earn, against the best choice anyone could have made knowing every price. Nobody knows them beforehand: even the best way to bid reaches only 86% to 96%.',
    from: 'Prices that lots sold for, one increment added, within your purse, or within what you spent where no purse was set.',
  },
  'missed-lot': {
    term: 'Missed',
    meaning:
      'A lot that another bought for less than your max bid. It should not happen: no bid went in, or it was too low.',
    from: 'What it sold for and one increment, against your max bid as the sale closed.',
  },
  'rule-cost': {
    term: 'Cost of your profit rule',
    meaning:
      'What lots above your max bid would still have earned. It is at most that: the winner may have been ready to pay more. Your rule is there to keep money for better cars.',
    from: 'Expected profit at one increment above the price that they sold for.',
  },
  'rationing-cost': {
    term: 'Cost of holding back',
    meaning:
      'What lots would have earned that the plan held back for better ones. Over time about as much is gained elsewhere.',
    from: 'Expected profit at one increment above the price that they sold for.',
  },
} satisfies Record<string, Term>;
