import type { DisputeReason } from '../setup/after-sale-rules.ts';

/**
 * What an argument of each kind usually stands on: a list to begin with, which the user changes (common practice, no
 * source).
 */
export const STARTING_NEEDS: Readonly<Record<DisputeReason, readonly string[]>> = {
  'bid-not-taken': ['Receipt of the bid', 'Picture of the page', 'The venue’s bid record'],
  'hidden-defect': [
    'Pictures of the defect',
    'A shop’s written estimate',
    'Condition report from the listing',
    'Bill of sale',
  ],
  'wrong-description': ['Picture of the listing', 'Pictures of the actual car', 'Bill of sale'],
  'title-missing': ['Bill of sale', 'Proof of payment', 'The venue’s date for the title'],
  'sale-undone': ['The venue’s notice', 'Bill of sale', 'Proof of payment'],
  other: ['Bill of sale'],
};
