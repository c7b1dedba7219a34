import type { DisputeReason } from '../setup/after-sale-rules.ts';

/** What the argument is about, as a heading. */
export const REASON_WORDS: Readonly<Record<DisputeReason, string>> = {
  'bid-not-taken': 'Bid did not go through',
  'hidden-defect': 'Undisclosed defect',
  'wrong-description': 'Wrong description',
  'title-missing': 'Title not received',
  'sale-undone': 'Venue canceled the sale',
  other: 'Other reason',
};
