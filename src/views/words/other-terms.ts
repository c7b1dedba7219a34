import { inSetup, type Term } from './term.ts';

/** Other words of the trade and of this tool. */
export const OTHER_TERMS = {
  'busy-hours': {
    term: 'Busy hours',
    meaning: 'The hours when everyone at the store is with customers. Closings in them are listed the evening before.',
    change: inSetup('busy', 'Busy hours'),
  },
  claim: {
    term: 'Claim',
    meaning:
      'A statement of the listing that carries money, such as the transmission or one owner. In a dispute: what one side asks for.',
  },
  evidence: {
    term: 'Evidence',
    meaning: 'What backs a statement: only stated, the VIN agrees, seen in a photo, confirmed, or refuted.',
  },
  'fee-schedule': {
    term: 'Fee schedule',
    meaning: 'What a venue charges its buyers. It has rates, each with the dates on which they apply.',
    change: inSetup('fees', 'Buy fees'),
  },
  comparable: {
    term: 'Comparable',
    meaning: 'A car like the lot with a price, sold or asking.',
  },
  curtailment: {
    term: 'Curtailment',
    meaning: 'A part of the floor-plan advance that is paid back before the car sells.',
  },
  'hammer-price': { term: 'Hammer price', meaning: 'The price at which the lot was sold, before fees.' },
  receipt: {
    term: 'Receipt',
    meaning: 'A saved record of what you did at the venue: a proxy, a live bid, a confirmation.',
  },
  team: {
    term: 'Team',
    meaning:
      'The computers of one dealership that keep one journal together, over a server of its own. Nothing is sent anywhere without one.',
  },
  'in-step': {
    term: 'In step',
    meaning:
      'Everything written on this computer was sent to the team, and everything of the others was fetched, at the time it shows.',
  },
  invitation: {
    term: 'Invitation',
    meaning: 'A text or QR code that lets one computer into the team, once and for a day.',
  },
  folder: { term: 'Folder', meaning: 'The papers and money of a won lot: what was expected beside what was billed.' },
  gross: {
    term: 'Gross',
    meaning: 'The sale price of a car less its bills. Pack, overhead and the cost of selling are not in it.',
    from: 'The bills and the sale recorded in the folder.',
  },
  owed: {
    term: 'Owed for won cars',
    meaning: 'What you still have to pay for the cars you won.',
    from: 'Bills not paid yet; for a car without a bill, hammer price and buy fees.',
  },
  correction: {
    term: 'Correction',
    meaning: 'A change that belongs to a closed month. It shows in the open month, and the closed one stays as it was.',
  },
  journal: {
    term: 'Journal',
    meaning: 'Everything that happened, in order. Each entry carries a fingerprint, so a later change shows.',
  },
  'evidence-pack': {
    term: 'Evidence pack',
    meaning: 'One file with the history of a lot that anyone can read and check without Headroom.',
  },
} satisfies Record<string, Term>;
