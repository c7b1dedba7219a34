import { inSetup, type Term } from './term.ts';

/** The figures of a won car, of its folder, and of the results of a week or a month. */
export const FOLDER_TERMS = {
  billed: {
    term: 'Billed so far',
    meaning: 'The bills recorded for the car.',
    from: 'The bills in its folder.',
  },
  'from-disputes': {
    term: 'From disputes',
    meaning: 'Money by which disputes about the car ended: added where you got it, taken off where you paid it.',
    from: 'How each dispute was closed.',
  },
  paid: { term: 'Paid', meaning: 'What you paid the venue for the car.', from: 'The payments in its folder.' },
  'refund-due': {
    term: 'Refund due',
    meaning: 'What was paid for the car and has to be returned to you.',
    from: 'Payments, bills and closed disputes. After a canceled sale it is all that was paid.',
  },
  'to-pay': {
    term: 'To pay, still owed',
    meaning: 'What is left to pay for the car. In its folder that counts every vendor.',
    from: 'Bills, and price and fees that are not billed yet, less payments and what disputes bring.',
  },
  'owed-to-others': {
    term: 'Owed to others',
    meaning: 'What is left to pay to a carrier, a shop or anybody but the venue.',
    from: 'Their bills less the payments in the folder.',
  },
  'not-billed': {
    term: 'Expected, no bill yet',
    meaning: 'Price and fees that you owe although the venue has not billed them.',
    from: 'The hammer price and the fee schedule of that day.',
  },
  'on-the-floor-plan': {
    term: 'On the floor plan',
    meaning: 'What the lender still has in the car: the advance less what was paid back.',
    from: 'The floor-plan entries in its folder.',
  },
  'expected-gross': {
    term: 'Expected gross',
    meaning: 'Gross as the worksheet expected it when the car was won.',
    from: 'Expected retail less expected costs, as they stood at the win.',
  },
  'all-in': {
    term: 'All-in',
    meaning: 'Hammer price and every other bill of a car.',
    from: 'The bills in the folders. Cars without a bill are counted apart.',
  },
  'tied-up': {
    term: 'Tied up',
    meaning: 'The all-in cost of cars that are not sold yet.',
    from: 'The folders of unsold cars.',
  },
  'against-max': {
    term: 'Against max',
    meaning: 'How far below or above your max bid cars were won, and lost cars went.',
    from: 'Each result, and the max bid at that time.',
  },
  'lost-below-max': {
    term: 'Lost below our max',
    meaning: 'Lost cars whose last price was below your max bid: another bid could still have won.',
    from: 'Each result with a price, and the max bid at that time.',
  },
  dispute: {
    term: 'Dispute, amount claimed',
    meaning: 'A claim about a sale, yours or against you, and the money that is asked for.',
    from: 'What you enter when you open the dispute.',
  },
  'floor-plan': {
    term: 'Floor plan',
    meaning: 'The lender’s line for inventory. Some title brands can’t go on it, and those cars need your own cash.',
    from: 'Your terms, and the title’s row in Setup.',
    change: inSetup('holding', 'Holding'),
  },
} satisfies Record<string, Term>;
