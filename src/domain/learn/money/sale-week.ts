import { type Cents, cents } from '../../money/cents.ts';
import type { LocalDate } from '../../time/local-date.ts';
import { hindsight, type Limits } from './hindsight.ts';
import type { LostLot } from './lost-lot.ts';

/** One lot of a week whose price is known: what it took, or would have taken. */
export interface WeekLot {
  readonly lot: string;
  readonly won: boolean;
  /** What it takes from the purse at that price. */
  readonly cash: Cents;
  readonly line: Cents;
  /** What it was expected to earn at that price. */
  readonly profit: Cents;
  /** Of a lost one, why; null where the price or the estimate is unknown. */
  readonly lost?: LostLot | null | undefined;
}

/** What a lot that the plan held back cost: what it would have earned, and that less what would have had to be left for it. */
export interface RationingCost {
  readonly lot: string;
  readonly gross: Cents;
  readonly net: Cents;
}

/** A week's buying against the best that could have been done with every price known beforehand. */
export interface SaleWeek {
  /** Its Monday. */
  readonly week: LocalDate;
  /** Whether the purse of that week is known; else the best is what the money that was spent could have earned. */
  readonly ofPurse: boolean;
  readonly won: number;
  /** What the cars that were won were expected to earn at the prices paid. */
  readonly achieved: Cents;
  /** What the best choice of lots was expected to earn at the prices they took. */
  readonly best: Cents;
  readonly bestLots: readonly string[];
  /** Achieved of best, 0 to 1; null where the best was nothing. */
  readonly score: number | null;
  readonly rationing: readonly RationingCost[];
  /** Lots of which the price or an estimate is not known: they are in neither. */
  readonly unknown: readonly string[];
}

/**
 * Who knows no price beforehand can't do better than this on average: the best policy itself reaches so much of hindsight,
 * by how short cash is; in simulated weekends.
 */
export const FAIR_SCORE = { low: 0.86, high: 0.96 } as const;

/**
 * Holds a week against hindsight.
 * @param limits what there was to spend; null where nobody said, and then it is what was spent
 */
export function saleWeek(
  week: LocalDate,
  lots: readonly WeekLot[],
  limits: Limits | null,
  unknown: readonly string[] = [],
): SaleWeek {
  const won = lots.filter((lot) => lot.won);
  const achieved = won.reduce((sum, { profit }) => sum + profit, 0);
  const all = hindsight(lots, enough(limits, won));
  return {
    week,
    unknown,
    ofPurse: limits !== null,
    won: won.length,
    achieved: cents(achieved),
    best: cents(all.profit),
    bestLots: all.chosen.map((place) => lots[place]?.lot ?? ''),
    score: all.profit > 0 ? achieved / all.profit : null,
    rationing: lots.flatMap((lot): RationingCost[] => {
      if (lot.lost?.because !== 'rationing') return [];
      const { profit } = hindsight([...won, lot], enough(limits, won));
      return [{ lot: lot.lot, gross: lot.profit, net: cents(Math.max(0, profit - achieved)) }];
    }),
  };
}

/** What was bought was within reach, whatever the purse said. */
function enough(limits: Limits | null, won: readonly WeekLot[]): Limits {
  const { cash, line, places } = limits ?? { cash: 0, line: 0, places: 0 };
  const took = (of: 'cash' | 'line') => won.reduce((sum, lot) => sum + lot[of], 0);
  return {
    cash: Math.max(cash, took('cash')),
    line: Math.max(line, took('line')),
    places: Math.max(places, won.length),
  };
}
