import { inSetup, type Term } from './term.ts';

/** How sure it is, what would change it, and what cash it takes. */
export const RISK_TERMS = {
  'expected-profit': {
    term: 'Expected profit',
    meaning: 'The profit on average over many such cars, if you buy at the max bid.',
    from: 'Expected retail less the price and every cost.',
  },
  'chance-of-loss': {
    term: 'Chance of losing money',
    meaning: 'How often such a deal ends in a loss.',
    from: 'Retail, each recon line, each doubt, the days to sell and a canceled sale, all varied at once and added up exactly.',
    change: inSetup('rules', 'Money rules'),
  },
  'worst-tenth': {
    term: 'Worst 1 in 10',
    meaning: 'The average profit or loss of the worst tenth of such deals.',
    from: 'The same calculation as the chance of losing money.',
  },
  range: {
    term: 'Low, likely, high',
    meaning: 'A range in which 1 in 10 comes out below low and 1 in 10 above high.',
    from: 'You, or the spread of your comparables.',
  },
  'fee-step': {
    term: 'Fee step',
    meaning: 'A price at which a fee jumps or falls. Just below a jump, a slightly lower bid saves the whole step.',
    from: 'The bands of the venue’s fee schedules.',
    change: inSetup('fees', 'Buy fees'),
  },
  'own-cash-needed': {
    term: 'Own cash at the max bid',
    meaning: 'How much of your own money the car takes, and when.',
    from: 'Price, fees and transport less the floor-plan advance, then recon and curtailments.',
    change: inSetup('holding', 'Holding'),
  },
} satisfies Record<string, Term>;
