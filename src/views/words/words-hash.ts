import type { LineGroup } from '../../domain/deal/price-breakdown.ts';
import type { TermId } from './glossary.ts';

/** The address of a term's entry on the Words page. It needs the ids only, so no label brings the table along. */
export const wordsHash = (id: TermId): string => `#/words/${id}`;

/** The entry that says what a line of the worksheet is. */
export const TERM_OF_LINE: Readonly<Record<LineGroup, TermId>> = {
  retail: 'retail',
  title: 'title',
  recon: 'recon',
  doubt: 'doubt',
  transport: 'transport',
  pack: 'pack',
  overhead: 'overhead',
  selling: 'selling',
  fee: 'buy-fee',
  charge: 'charge',
  interest: 'interest',
  'own-cash': 'own-cash',
  'haircut-cost': 'own-results',
  holding: 'lot-space',
  undone: 'canceled-sale',
  'required-profit': 'required-profit',
  slack: 'rounding',
  ceiling: 'substitute',
  'risk-cap': 'held-back',
  sealed: 'held-back',
};
