import type { DisputeReason } from '../setup/after-sale-rules.ts';

/** What the argument is about, as a heading. */
export const REASON_WORDS: Readonly<Record<DisputeReason, string>> = {
  'bid-not-taken': 'A bid did not go through',
  'hidden-defect': 'A defect that was not said',
  'wrong-description': 'A wrong description',
  'title-missing': 'The title does not come',
  'sale-undone': 'The venue undid the sale',
  other: 'Another reason',
};
