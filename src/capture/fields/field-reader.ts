import type { DecimalMark } from '../../domain/money/written-number.ts';
import type { Instant } from '../../domain/time/instant.ts';
import type { Zone } from '../../domain/time/zone.ts';
import type { Candidates } from '../draft/candidates.ts';
import type { Line } from '../text/lines.ts';
import type { Pair } from '../text/pair.ts';

/** What turns a wall time of the page into a moment. */
export interface ClockContext {
  readonly now: Instant;
  readonly storeZone: Zone;
  readonly venueZone: Zone | undefined;
  /** The zone of all times of the page, where one of its lines says so; else empty. */
  readonly stated: string;
  /** The page's language, which says whether 5/11 is in May or in November. */
  readonly language: string;
}

/** What the page says outside its lots that holds for this one too: the text nearest above it first. */
export interface SharedWords {
  readonly lines: readonly Line[];
  readonly pairs: readonly Pair[];
}

/** Everything that is said of one lot, for the readers of its fields. */
export interface LotSource {
  readonly lines: readonly Line[];
  readonly pairs: readonly Pair[];
  /** Lines that no pair has taken apart: amounts and moments there have only the words around them. */
  readonly looseLines: readonly Line[];
  /** Lines in which a figure with a unit, or a telling word, may be a fact of the car: all but those that are named as something else. */
  readonly factLines: readonly Line[];
  readonly shared: SharedWords;
  /** The whole page is about this lot, or only a part of a list is. */
  readonly extent: 'page' | 'card';
  readonly decimal: DecimalMark | undefined;
  /** The page says that its dollars are not those of the United States. */
  readonly otherCurrency: boolean;
  readonly clock: ClockContext;
  readonly thisYear: number;
  /** Makes that are known from the user's other lots and from this page. */
  readonly makes: readonly string[];
}

/** Reads one or a few fields of a lot into the candidates. */
export type FieldReader = (source: LotSource, into: Candidates) => void;
