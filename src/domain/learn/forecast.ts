import type { MoneyAppraisal } from '../appraisal/appraise.ts';
import type { ExpectedPurchase } from '../books/folder/expected.ts';
import type { Survival } from '../carrying/days-to-sell.ts';
import type { Funding } from '../deal/deal.ts';
import type { LotFacts } from '../lot/lot.ts';
import type { Cents } from '../money/cents.ts';
import type { Instant } from '../time/instant.ts';
import type { PricingContext } from '../worksheet/pricing-context.ts';

/** Retail as it was forecast, with what the title leaves of it: what the sale of the car is held against. */
export interface RetailForecast {
  /** The figure the bid started from, ceilings applied. */
  readonly mean: Cents;
  /** One in ten below and one in ten above. */
  readonly low: Cents;
  readonly high: Cents;
  /** The figure in the middle before any ceiling. */
  readonly uncapped: Cents;
  /** Student's t of the log price before any ceiling: its scale, and its degrees of freedom. */
  readonly scale: number;
  readonly freedom: number;
  /** Standard deviation of the log price of the lognormal with the same range, on which the chance of a loss rests. */
  readonly sigma: number;
  /** No price above it was thought possible. */
  readonly cap?: Cents | undefined;
  readonly basis: 'guess' | 'comps' | 'guess-and-comps';
}

/** How long the car was expected to stand. */
export interface DaysForecast {
  /** Half of such cars would be sold within so many days. */
  readonly median: number;
  /** Days until it is sold, or wholesaled at the horizon, on average. */
  readonly expected: number;
  readonly survives: Survival;
  /** The day on which an unsold car would have been wholesaled. */
  readonly horizon: number;
}

/** The deal as it was forecast at one hammer price: `profit` is `retail` less everything else, to the cent. */
export interface PriceForecast {
  readonly price: Cents;
  /** What the title leaves of expected retail. */
  readonly retail: Cents;
  /** Expected cost of doubts about the listing, and of a correction from the dealer's own results. */
  readonly doubts: Cents;
  /** Buy fees and fixed charges. */
  readonly fees: Cents;
  readonly transport: Cents;
  readonly recon: Cents;
  /** Pack, overhead and the cost of selling: no bill comes for them. */
  readonly standing: Cents;
  /** Interest, the price of own cash, lot space and the lender's fee. */
  readonly hold: Cents;
  /** What the chance of a canceled sale took off. */
  readonly undone: Cents;
  /** Hammer, fees, charges and transport. */
  readonly allIn: Cents;
  readonly financed: Cents;
  /** Own cash, recon included. */
  readonly cash: Cents;
  readonly funding: Funding['kind'];
  readonly profit: Cents;
  /** The least profit that the rule asked for. */
  readonly required: Cents;
}

/** What was planned for a lot when its bid was placed. */
export interface PlanForecast {
  /** Null when the plan said not to bid. */
  readonly bid: Cents | null;
  /** Chance to win at it, 0 to 1; undefined where there was not enough history to say. */
  readonly chance?: number | undefined;
}

/** Everything that was believed of one lot at one moment, as it stood then. */
export interface Forecast {
  readonly at: Instant;
  /** The lot was written down only after its sale was over: what is said of it then is no forecast. */
  readonly late: boolean;
  /** Who last put in what retail was estimated from; empty where nobody did. */
  readonly estimator: string;
  /** What was known then, and the setup that held, made ready: with these it can be priced again, in any other way. */
  readonly facts: LotFacts;
  readonly context: PricingContext;
  readonly appraisal: MoneyAppraisal;
  /** Null without an estimate. */
  readonly retail: RetailForecast | null;
  readonly days: DaysForecast;
  /** Null when no price worked; undefined where it could not be worked out. */
  readonly maxBid: Cents | null | undefined;
  /** The deal at the price that was paid, or that would have been needed; null where either is unknown. */
  readonly deal: PriceForecast | null;
  /** The bills that were to come at that price; null where there is no price. */
  readonly purchase: ExpectedPurchase | null;
  readonly plan?: PlanForecast | undefined;
}
