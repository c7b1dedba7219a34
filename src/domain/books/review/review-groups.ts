import { groupBy } from '../../group-by.ts';
import { type Cents, cents } from '../../money/cents.ts';
import type { Ending } from '../../sale/result.ts';
import { mondayOf } from '../../time/calendar-day.ts';
import type { LocalDate } from '../../time/local-date.ts';
import { monthOf } from '../month.ts';

/** What the review needs of a lot whose sale is over. */
export interface ReviewLot {
  /** The day it ended, in the store's zone. */
  readonly day: LocalDate;
  readonly venue: string;
  /** Who bid, or else who wrote the result down. */
  readonly buyer: string;
  readonly ended: Ending;
  /** It was won, and the sale was canceled since. */
  readonly canceled: boolean;
  /** Bids that somebody placed on it. */
  readonly bids: number;
  readonly hammer: Cents | null;
  readonly maxBid: Cents | null;
  /** Everything that was recorded for a purchase that stands, fees and all; null until its price is billed. */
  readonly allIn: Cents | null;
  /** What is in it while it stands unsold: all-in as recorded, else as expected; null where neither is known. */
  readonly tiedUp: Cents | null;
  readonly openDisputes: number;
  readonly disputed: Cents;
  /** Of a car that has sold, where both are known. */
  readonly expectedGross: Cents | null;
  readonly actualGross: Cents | null;
}

export const REVIEW_BY = ['week', 'month', 'venue', 'buyer'] as const;
export type ReviewBy = (typeof REVIEW_BY)[number];

/** Hammer prices beside max bids: under, at and over the max bid are three groups, whose averages are never mixed. */
export interface AgainstMax {
  readonly under: number;
  /** What was left up to the max bid, together and on average; null where none is under. */
  readonly left: Cents;
  readonly leftEach: Cents | null;
  readonly at: number;
  readonly over: number;
  /** By how much they went over, on average; null where none did. */
  readonly overEach: Cents | null;
  /** Without a price or a max bid, so nothing can be said of them. */
  readonly notCompared: number;
}

/** One line of the review. */
export interface ReviewGroup {
  readonly key: string;
  readonly lots: number;
  /** Lots on which a bid was placed, or that were won or lost. */
  readonly bidOn: number;
  readonly bids: number;
  /** Won, and the sale stands. */
  readonly won: number;
  readonly canceled: number;
  readonly lost: number;
  readonly notSold: number;
  /** Nobody wrote down how these ended. */
  readonly unknown: number;
  /** Won of won and lost, 0 to 1; null when there is neither. */
  readonly winRate: number | null;
  /** Hammer prices of the wins that stand. */
  readonly hammer: Cents;
  /** All-in of those whose price is billed, and how many that are: never added to hammer prices. */
  readonly allIn: Cents;
  readonly billed: number;
  readonly tiedUp: Cents;
  /** Unsold cars whose cost nobody knows; they are not in `tiedUp`. */
  readonly tiedUpUnknown: number;
  /** Hammer prices of wins as a share of their max bids; null where no max bid is known. */
  readonly paidOfMax: number | null;
  /** Hammer prices of wins that stand and of losses, each held against the max bid of that moment. */
  readonly wins: AgainstMax;
  readonly losses: AgainstMax;
  readonly openDisputes: number;
  readonly disputed: Cents;
  readonly sold: number;
  /** Over cars that have sold and of which both are known. */
  readonly expectedGross: Cents | null;
  readonly actualGross: Cents | null;
}

/** Lots by week, month, venue or buyer, in the order of the keys. */
export function reviewGroups(lots: readonly ReviewLot[], by: ReviewBy): ReviewGroup[] {
  return [...groupBy(lots, KEY[by])]
    .map(([key, own]) => reviewGroup(key, own))
    .sort((a, b) => (a.key < b.key ? -1 : 1));
}

const KEY: Readonly<Record<ReviewBy, (lot: ReviewLot) => string>> = {
  week: ({ day }) => mondayOf(day),
  month: ({ day }) => monthOf(day),
  venue: ({ venue }) => venue,
  buyer: ({ buyer }) => buyer,
};

/** One line over these lots; averages are over the lots, not over other averages. */
export function reviewGroup(key: string, lots: readonly ReviewLot[]): ReviewGroup {
  const won = lots.filter(({ ended, canceled }) => ended === 'won' && !canceled);
  const billed = won.flatMap(({ allIn }) => allIn ?? []);
  const inStock = lots.map((lot) => lot.tiedUp);
  const lost = lots.filter(({ ended }) => ended === 'lost');
  const decided = won.length + lost.length;
  const priced = won.flatMap(({ hammer, maxBid }) =>
    hammer === null || maxBid === null || maxBid === 0 ? [] : [{ hammer, maxBid }],
  );
  const sold = lots.flatMap(({ expectedGross, actualGross }) =>
    expectedGross === null || actualGross === null ? [] : [{ expectedGross, actualGross }],
  );
  return {
    key,
    lots: lots.length,
    bidOn: lots.filter(({ bids, ended }) => bids > 0 || ended === 'won' || ended === 'lost').length,
    bids: total(lots.map((lot) => lot.bids)),
    won: won.length,
    canceled: lots.filter((lot) => lot.canceled).length,
    lost: lost.length,
    notSold: lots.filter(({ ended }) => ended === 'not-sold' || ended === 'withdrawn').length,
    unknown: lots.filter(({ ended }) => ended === 'not-watched' || ended === 'pending').length,
    winRate: decided === 0 ? null : won.length / decided,
    hammer: cents(total(won.map(({ hammer }) => hammer ?? 0))),
    allIn: cents(total(billed)),
    billed: billed.length,
    tiedUp: cents(total(inStock.map((amount) => amount ?? 0))),
    tiedUpUnknown: inStock.filter((amount) => amount === null).length,
    paidOfMax:
      priced.length === 0
        ? null
        : total(priced.map(({ hammer }) => hammer)) / total(priced.map(({ maxBid }) => maxBid)),
    wins: againstMax(won),
    losses: againstMax(lost),
    openDisputes: total(lots.map((lot) => lot.openDisputes)),
    disputed: cents(total(lots.map((lot) => lot.disputed))),
    sold: sold.length,
    expectedGross: sold.length === 0 ? null : cents(total(sold.map((lot) => lot.expectedGross))),
    actualGross: sold.length === 0 ? null : cents(total(sold.map((lot) => lot.actualGross))),
  };
}

/** Averages are to the cent, half up. */
function againstMax(lots: readonly ReviewLot[]): AgainstMax {
  const left = lots.flatMap(({ hammer, maxBid }) => (hammer === null || maxBid === null ? [] : [maxBid - hammer]));
  const under = left.filter((each) => each > 0);
  const over = left.filter((each) => each < 0);
  const each = (some: readonly number[], sign: 1 | -1) =>
    some.length === 0 ? null : cents(Math.round((sign * total(some)) / some.length));
  return {
    under: under.length,
    left: cents(total(under)),
    leftEach: each(under, 1),
    at: left.length - under.length - over.length,
    over: over.length,
    overEach: each(over, -1),
    notCompared: lots.length - left.length,
  };
}

const total = (numbers: readonly number[]): number => numbers.reduce((sum, number) => sum + number, 0);
