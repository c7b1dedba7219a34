import type { ColumnHabits } from '../../domain/close/close-known.ts';
import type { DecimalMark } from '../../domain/money/written-number.ts';
import type { Outcome } from '../../domain/outcome.ts';
import type { Venue } from '../../domain/setup/venue.ts';
import type { CloseTime } from '../../domain/time/close-time.ts';
import type { Instant } from '../../domain/time/instant.ts';
import type { Zone } from '../../domain/time/zone.ts';
import type { CloseHabits } from '../close-habits.ts';
import type { KnownNames } from '../columns/look-of-cells.ts';
import type { Meant } from '../import-questions.ts';

/** Reads the words of a close; see src/domain/close/read-close-time.ts. */
export type CloseReader = (
  text: string,
  known: {
    readonly now: Instant;
    readonly storeZone: Zone;
    readonly venueZone?: Zone;
    readonly zone?: Zone;
    readonly column?: ColumnHabits;
  },
) => Outcome<CloseTime>;

/** What has to be known to read a row. */
export interface ReadContext extends KnownNames {
  readonly now: Instant;
  readonly storeZone: Zone;
  readonly venues: readonly Pick<Venue, 'id' | 'name' | 'zone'>[];
  readonly from: 'file' | 'pasted';
  readonly readClose: CloseReader;
  /** How many cells most rows of the file have; a longer row has been cut apart somewhere. */
  readonly usualCells?: number | undefined;
  /** Which mark stands before decimals in this file, where it is known. */
  readonly decimal?: DecimalMark | undefined;
  /** How the columns of closes write, where their cells have been looked at. */
  readonly closeHabits?: CloseHabits | undefined;
  /** What the user said that names mean which the setup does not know. */
  readonly meant?: Meant | undefined;
}
