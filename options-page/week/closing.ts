import type { RushStanding } from '../../src/domain/rush/rush-bands.ts';
import type { Instant } from '../../src/domain/time/instant.ts';
import type { LocalDate, LocalTime } from '../../src/domain/time/local-date.ts';
import type { LotState } from '../../src/journal/lot-state.ts';
import type { TimeMark } from '../../src/ui/time-line/time-mark.ts';

/** A lot's close in store time, and how it stands to the busy hours. */
export interface Closing extends TimeMark {
  readonly lot: LotState;
  readonly close: Instant;
  /** Both on the store's clock. */
  readonly date: LocalDate;
  readonly time: LocalTime;
  readonly rush: RushStanding;
}

/** Whether somebody may still bid: it has not closed, and no result is known. */
export const isOpen = ({ need }: Closing): boolean => need !== 'over' && need !== 'unsaid';
