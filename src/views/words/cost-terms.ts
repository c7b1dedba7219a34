import { inSetup, type Term } from './term.ts';

/** What a worksheet takes off retail, line by line. */
export const COST_TERMS = {
  retail: {
    term: 'Expected retail',
    meaning: 'What the car will sell for on average, as it really is.',
    from: 'Your comparables, each adjusted to this lot, and your own estimate, capped by what a customer could buy instead.',
    change: inSetup('estimating', 'Estimating'),
  },
  substitute: {
    term: 'Substitute',
    meaning:
      'What a customer could buy instead, such as a new one after its rebate. Nobody pays more for this car, so it caps retail.',
    from: 'You, on the worksheet.',
  },
  title: {
    term: 'Title discount',
    meaning: 'How much less a car with this title brings than one with a clean title.',
    from: 'Your own % of clean retail for each title.',
    change: inSetup('titles', 'Titles'),
  },
  recon: {
    term: 'Recon',
    meaning: 'What it takes to make the car ready for sale.',
    from: 'The lot’s recon lines, each times the chance that it is needed; otherwise your standard amount.',
    change: inSetup('costs', 'Costs'),
  },
  doubt: {
    term: 'Doubt',
    meaning: 'What the listing says that nobody has checked, priced. It gets smaller with better evidence.',
    from: 'What the car loses if the statement is false, times the chance that it is false.',
    change: inSetup('estimating', 'Estimating'),
  },
  transport: {
    term: 'Transport',
    meaning: 'What it costs to have the car delivered to the store.',
    from: 'The lot’s quote, otherwise the venue’s price per car or per mile.',
    change: inSetup('venues', 'Venues'),
  },
  'buy-fee': {
    term: 'Buy fee',
    meaning: 'What the venue charges its buyer, by hammer price.',
    from: 'The venue’s fee schedules, at the rates of the day on which the lot closes.',
    change: inSetup('fees', 'Buy fees'),
  },
  charge: {
    term: 'Fixed charge',
    meaning: 'A charge of the venue that is the same at every price, such as a gate pass.',
    from: 'The venue’s fee schedules.',
    change: inSetup('fees', 'Buy fees'),
  },
  interest: {
    term: 'Floor-plan interest',
    meaning: 'What the lender charges until the car sells.',
    from: 'The floor plan’s rate and day count, its curtailments, and the expected days to sell.',
    change: inSetup('holding', 'Holding'),
  },
  'own-cash': {
    term: 'Cost of own cash',
    meaning: 'What your own cash would earn elsewhere, or cost to borrow, while it is tied up in the car.',
    from: 'Your cost of own cash per year, times the cash and the expected days to sell.',
    change: inSetup('holding', 'Holding'),
  },
  'lot-space': {
    term: 'Lot space',
    meaning: 'What it costs to let a car stand on the lot.',
    from: 'Your cost of lot space per day, times the expected days to sell.',
    change: inSetup('holding', 'Holding'),
  },
  'days-to-sell': {
    term: 'Days to sell',
    meaning: 'How long the car is expected to stand on the lot.',
    from: 'Your own answer and your own cars, unsold ones included. Similar cars in stock make it longer.',
    change: inSetup('holding', 'Holding'),
  },
  pack: {
    term: 'Pack',
    meaning: 'A fixed amount added to the cost of every car.',
    from: 'Your own figure.',
    change: inSetup('costs', 'Costs'),
  },
  overhead: {
    term: 'Overhead',
    meaning: 'Each car’s share of rent, wages and the rest.',
    from: 'Your own figure.',
    change: inSetup('costs', 'Costs'),
  },
  selling: {
    term: 'Cost of selling',
    meaning: 'Commission, advertising and delivery to the customer.',
    from: 'Your own figure.',
    change: inSetup('costs', 'Costs'),
  },
  'canceled-sale': {
    term: 'Allowance for a canceled sale',
    meaning: 'Some cars go back after a dispute, and not all the money comes back.',
    from: 'How often a sale is canceled, times what you lose each time.',
    change: inSetup('costs', 'Costs'),
  },
  'required-profit': {
    term: 'Profit you require',
    meaning: 'The least a deal must earn to be worth doing.',
    from: 'The largest of three: your minimum per car, your minimum % of retail, your minimum return on own cash.',
    change: inSetup('rules', 'Money rules'),
  },
  'held-back': {
    term: 'Held back',
    meaning:
      'The max bid is lower than your profit alone would allow, because of the chance of a loss or a sealed bid.',
    from: 'Your highest chance of a loss; for a sealed sale, the likely best other bid.',
    change: inSetup('rules', 'Money rules'),
  },
  rounding: {
    term: 'Left by rounding down',
    meaning: 'Bids move by increments. One more increment would not meet your rules.',
    from: 'The difference between the exact price and the increment below it.',
    change: inSetup('venues', 'Venues'),
  },
} satisfies Record<string, Term>;
