import type { BidState } from '../../domain/bid/bid-state.ts';
import type { RushStanding } from '../../domain/rush/rush-bands.ts';
import type { Instant } from '../../domain/time/instant.ts';
import type { LocalDate, LocalTime } from '../../domain/time/local-date.ts';
import type { LotState } from '../../folds/lot-state.ts';
import type { TimeMark } from './time-mark.ts';

/** A lot's close in store time, and how it stands to the busy hours. */
export interface Closing extends TimeMark {
  readonly lot: LotState;
  readonly close: Instant;
  /** Both on the store's clock. */
  readonly date: LocalDate;
  readonly time: LocalTime;
  readonly rush: RushStanding;
  /** What our bid on it really is. */
  readonly bid: BidState;
}

/** Whether somebody may still bid: it has not closed, and no result is known. */
export const isOpen = ({ need }: Closing): boolean => need !== 'over' && need !== 'unsaid';
