import type { ComparedLine } from '../books/folder/compare-lines.ts';
import type { LotId } from '../lot/lot.ts';
import type { Cents } from '../money/cents.ts';
import type { Ending } from '../sale/result.ts';
import type { PurseEntry } from '../setup/purse-entry.ts';
import type { Instant } from '../time/instant.ts';
import type { LocalDate } from '../time/local-date.ts';
import type { Forecast } from './forecast.ts';

/** What a purchase came to so far. An amount is null until a bill of its kind is booked. */
export interface Bought {
  /** The bills beside what was forecast as the sale closed. */
  readonly lines: readonly ComparedLine[];
  readonly hammer: Cents | null;
  readonly fees: Cents | null;
  readonly transport: Cents | null;
  readonly recon: Cents | null;
  /** Interest and fees of the lender. */
  readonly interest: Cents | null;
  /** Bills of any other kind; money from disputes is below zero. */
  readonly other: Cents;
  /** Hammer, fees and transport, once all three that were expected are billed. */
  readonly allIn: Cents | null;
  /** Whole days since it arrived (since the win, where nobody noted its arrival): until it sold, or until today. */
  readonly days: number;
  /** False for a car that still stands: its days are then only a least number. */
  readonly sold: boolean;
  readonly sale: {
    readonly cents: Cents;
    readonly date: LocalDate;
    readonly buyer: 'retail' | 'business' | 'wholesale';
  } | null;
  /** Of a sale that was canceled: what was paid and does not come back. */
  readonly lost: Cents | null;
}

/** What became of a lot. */
export interface Happened {
  readonly ended: Ending;
  /** When it ended, as far as known, and on which day of the store's calendar. */
  readonly at: Instant;
  readonly date: LocalDate;
  /** What it went for; null where nobody knows, or nobody bought it. */
  readonly hammer: Cents | null;
  /** What we had in the sale; null when we did not bid. */
  readonly bid: Cents | null;
  /** It was won, and the sale was canceled since. */
  readonly canceled: boolean;
  /** Null for a lot that was not won. */
  readonly bought: Bought | null;
}

/** A forecast as it stood, and what happened: all of Learn is worked out from these. */
export interface PastLot {
  readonly lot: LotId;
  readonly title: string;
  readonly venue: string;
  /** Make and model, as far as known: cars that are alike. */
  readonly kind: string;
  readonly forecast: Forecast;
  readonly happened: Happened;
  /** What there was to buy with, as it was counted last before the close; undefined where nobody had said. */
  readonly purse?: PurseEntry | undefined;
}
