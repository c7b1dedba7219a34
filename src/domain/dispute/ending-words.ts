import type { DisputeEnding, DisputeStep } from './dispute.ts';

/** How a dispute ended, as a person says it. */
export const ENDING_WORDS: Readonly<Record<DisputeEnding, string>> = {
  upheld: 'Upheld',
  'not-upheld': 'Not upheld',
  'price-adjusted': 'Price adjusted',
  'sale-undone': 'Sale canceled',
  'sold-again': 'Sold again',
  dropped: 'Dropped',
};

/** What was done, as the line of a history begins. */
export const STEP_WORDS: Readonly<Record<DisputeStep['what'], string>> = {
  told: 'Claim filed',
  answered: 'Answered',
  heard: 'Heard from them',
  talk: 'Talked',
  offer: 'Received an offer',
  got: 'Received',
  note: 'Noted',
};
