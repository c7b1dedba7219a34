import type { Instant } from '../time/instant.ts';
import type { Zone } from '../time/zone.ts';
import type { DateOrder } from './date-order.ts';

/** What is known about a close beyond its words. */
export interface CloseKnown {
  readonly now: Instant;
  readonly storeZone: Zone;
  readonly venueZone?: Zone | undefined;
  /** A zone stated beside the time, such as a column of its own. It wins over the venue's. */
  readonly zone?: Zone | undefined;
  /** How the column writes that the words stand in. */
  readonly column?: ColumnHabits | undefined;
}

/** What all cells of a column say together about each of them. */
export interface ColumnHabits {
  /** The order of day and month; absent where nothing decides. */
  readonly order?: DateOrder | undefined;
  /** Its times are on the 24-hour clock. */
  readonly wholeDay?: boolean | undefined;
  /** It says how much time is left, and in which unit where its cells are bare numbers. */
  readonly countsDown?: 'by its words' | 'days' | 'hours' | 'minutes' | undefined;
}
