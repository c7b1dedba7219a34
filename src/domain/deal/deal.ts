import type { Charge, FeeTable } from '../fees/fee-schedule.ts';
import type { Cents } from '../money/cents.ts';
import type { Factor, Ppm } from '../money/rate.ts';
import type { Increments } from '../price/increments.ts';

/** A cost that does not depend on the hammer price, named as the worksheet shows it. */
export interface CostLine {
  /** What the line is about; sensitivity and the pictures group by it. */
  readonly kind: 'recon' | 'pack' | 'overhead' | 'transport' | 'doubt' | 'selling' | 'haircut-cost';
  readonly label: string;
  /** The expected amount: 0 or more, but for a correction, which may give something back. */
  readonly cents: Cents;
  /** One in ten below, one in ten above, where the amount is uncertain. */
  readonly range?: { readonly low: Cents; readonly high: Cents };
}

/** How the purchase is paid for until it sells. */
export interface Funding {
  readonly kind: 'floor' | 'cash';
  /** Share of the advance base that the lender advances, at most the whole; ignored for cash. */
  readonly advance: Ppm;
  /** Whether the lender advances on the sale's whole bill (hammer, fees and charges), or on the hammer alone. */
  readonly advanceOnFees: boolean;
  /** The most the lender advances on one car. */
  readonly advanceCap?: Cents;
  /** Expected interest per dollar advanced, over the whole holding time, curtailments included. */
  readonly floorFactor: Factor;
  /** Expected cost per dollar of own cash, over the whole holding time. */
  readonly cashFactor: Factor;
  /** Per-unit fees and per-day lot costs that do not depend on the price. */
  readonly flatHold: Cents;
}

/** The least profit that makes a deal worth doing: the largest of the three binds. */
export interface ProfitRule {
  readonly dollars: Cents;
  /** Share of retail after the title haircut. */
  readonly shareOfRetail: Ppm;
  /** Per dollar of own cash, over the expected days to sell (rate per day × days). */
  readonly perCash: Factor;
}

/** The chance that a sale is canceled, and what is not refunded then: `fixed + rate × hammer`. */
export interface Unwind {
  readonly chance: Ppm;
  readonly fixed: Cents;
  readonly rate: Ppm;
}

/**
 * Everything the max bid depends on, in numbers. Built from a lot and the setup by `dealOf`; the arithmetic below it
 * knows nothing of lots, venues or dates.
 */
export interface Deal {
  /** Expected retail with a clean title: the mean, not the median. */
  readonly retail: Cents;
  /** One in ten below, one in ten above. Only shown and used for what-ifs: the max bid rests on the mean. */
  readonly retailRange?: { readonly low: Cents; readonly high: Cents };
  /** Share of retail that the title leaves: 1,000,000 for a clean one. */
  readonly titleKeeps: Ppm;
  /** The title as the worksheet names it. */
  readonly titleName?: string;
  readonly costs: readonly CostLine[];
  readonly fees: readonly FeeTable[];
  readonly charges: readonly Charge[];
  readonly funding: Funding;
  readonly rule: ProfitRule;
  readonly unwind: Unwind;
  readonly increments: Increments;
}
