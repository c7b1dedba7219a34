import type { LotState } from '../../folds/lot-state.ts';
import { venueOf } from './list-order.ts';

/** The head of the lots of one venue. */
export interface VenueLine {
  readonly venue: string;
  readonly lots: readonly LotState[];
}

/** What stands on a line of the list. */
export type ListLine = LotState | VenueLine;

export const isLot = (line: ListLine): line is LotState => 'facts' in line;

/**
 * The lines of the list: the lots in their order, and before those of each venue a head.
 * @param lots in the order of `orderLots` by venue
 */
export function withVenues(lots: readonly LotState[]): readonly ListLine[] {
  const lines: ListLine[] = [];
  let group: LotState[] = [];
  let venue: string | undefined;
  for (const lot of lots) {
    const its = venueOf(lot);
    if (its !== venue) {
      venue = its;
      group = [];
      lines.push({ venue, lots: group });
    }
    group.push(lot);
    lines.push(lot);
  }
  return lines;
}
