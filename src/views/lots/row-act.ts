import type { DealProblem } from '../../domain/worksheet/deal-of.ts';

/**
 * What can be done in a lot's row: `bid` and `end` say what was bid and how it ended; `venue`, `retail` and `close` fill in a
 * fact; `setup-…` and `sheet` are done elsewhere.
 */
export type RowAct =
  | 'bid'
  | 'end'
  | 'venue'
  | 'retail'
  | 'close'
  | 'sheet'
  | 'setup-venues'
  | 'setup-fees'
  | 'setup-titles';

const ACTS: Readonly<Record<DealProblem['reason'], RowAct>> = {
  'no-retail': 'retail',
  'no-venue': 'venue',
  'needs-date': 'close',
  'unknown-venue': 'setup-venues',
  'unknown-fees': 'setup-venues',
  'no-edition': 'setup-fees',
  'no-fees': 'sheet',
  'no-transport': 'sheet',
  'unknown-title': 'setup-titles',
  'unconfirmed-title': 'sheet',
  'unread-cell': 'sheet',
  'not-meant': 'sheet',
  'cant-work-out': 'sheet',
};

/** What settles the first thing that is missing. */
export const rowActFor = (need: DealProblem['reason'] | undefined): RowAct =>
  need === undefined ? 'sheet' : ACTS[need];
