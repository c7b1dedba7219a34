import { compareLines } from '../../src/domain/books/folder/compare-lines.ts';
import { dealTotals } from '../../src/domain/deal/price-sums.ts';
import type { TimedLot } from '../../src/domain/learn/corrections/win-outcomes.ts';
import { forecastOf } from '../../src/domain/learn/forecast-of.ts';
import type { Bought, PastLot } from '../../src/domain/learn/happened.ts';
import { type LotFacts, type LotId, lotFactsSchema } from '../../src/domain/lot/lot.ts';
import { type Cents, cents } from '../../src/domain/money/cents.ts';
import { nextPrice } from '../../src/domain/price/price-grid.ts';
import { type Setup, setupSectionsSchema } from '../../src/domain/setup/setup.ts';
import { type Instant, instant } from '../../src/domain/time/instant.ts';
import { DAY, HOUR } from '../../src/domain/time/units.ts';
import { dateIn } from '../../src/domain/time/wall-clock.ts';
import { dealOf } from '../../src/domain/worksheet/deal-of.ts';
import { type PricingContext, pricingContext } from '../../src/domain/worksheet/pricing-context.ts';
import { standingOf } from '../../src/domain/worksheet/worksheet-of.ts';
import { type Dice, diceOf } from './dice.ts';

/** How an invented store's figures are wrong; every one that is left out is right. */
export interface Biases {
  /** What cars bring, times what was expected. */
  readonly retail?: number;
  /** How wide prices lie, times what was expected. */
  readonly spread?: number;
  /** What the lines of recon cost, times the estimate. */
  readonly recon?: Readonly<Record<string, number>>;
  /** Half of the cars sell within so many days; the setup says 40. */
  readonly median?: number;
  /** Share of purchases that are canceled; the setup says 3%. */
  readonly canceled?: number;
  /** What 10,000 miles and a year take off, and what is paid of an asking price; the setup says 4.5%, 11% and 97%. */
  readonly miles?: number;
  readonly years?: number;
  readonly asking?: number;
  /** How far off the estimate is from what the car is worth to this store, one standard deviation of the logarithm. */
  readonly error?: number;
}

/** Two years of a store. */
export interface InventedStore {
  readonly lots: readonly TimedLot[];
  readonly setup: Setup;
  readonly now: Instant;
}

/** An invented dealer with one venue, whose figures the biases are against. */
const SETUP: Setup = setupSectionsSchema.parse({
  store: { name: 'Cottonwood Truck & Van', zone: 'America/Boise' },
  venues: [
    {
      id: 'sagebrush',
      name: 'Sagebrush Fleet Sale',
      zone: 'America/Phoenix',
      feeScheduleIds: ['sagebrush'],
      increments: [{ fromCents: 0, stepCents: 2500 }],
      transport: { kind: 'flat', cents: 40_000 },
    },
  ],
  feeSchedules: [
    {
      id: 'sagebrush',
      name: 'Sagebrush',
      editions: [{ tables: [{ label: 'Buy fee', bands: [{ fromCents: 0, flatCents: 30_000 }] }] }],
    },
  ],
  titles: [{ id: 'clean', name: 'Clean' }],
  rules: { dollarsCents: 150_000 },
  costs: { packCents: 20_000 },
  undone: { chancePpm: 30_000, lostCents: 20_000 },
  carrying: { cashAnnualRatePpm: 100_000, lotCentsPerDay: 400, daysToSell: { kind: 'median', days: 40 } },
  rush: { weekly: [] },
  alerts: {},
});

const FIRST = Date.UTC(2024, 0, 5, 18);
const WEEKS = 104;
const LINES: Readonly<Record<string, number>> = { Tires: 60_000, Brakes: 45_000, Body: 80_000 };
/** A buyer's own range of one in ten either way, 6% off at the level; with a car's own spread it comes to some 10%. */
const REACH = Math.exp(0.06 * 1.2816);

/**
 * Two years of a store whose figures are wrong in known ways. Rivals bid by what the car is worth to them, which is near
 * what it is worth to this store; every tenth lot or so is won.
 * @param perWeek lots bid on in a week
 */
export function inventedStore(biases: Biases, seed: number, perWeek: number, setup: Setup = SETUP): InventedStore {
  const dice = diceOf(seed);
  const context = pricingContext(setup);
  const now = instant(FIRST + WEEKS * 7 * DAY);
  const lots = Array.from({ length: WEEKS * perWeek }, (_, i) => {
    const at = instant(FIRST + Math.floor(i / perWeek) * 7 * DAY + (i % perWeek) * 60_000);
    return pastLot(context, biases, dice, { at, now, id: `lot-${i}` as LotId });
  });
  return { lots, setup, now };
}

interface Place {
  readonly at: Instant;
  readonly now: Instant;
  readonly id: LotId;
}

function pastLot(context: PricingContext, biases: Biases, dice: Dice, { at, now, id }: Place): TimedLot {
  const worth = 16_000_00 * Math.exp(0.2 * dice.normal());
  const estimate = worth * Math.exp((biases.error ?? 0) * dice.normal());
  const facts = factsOf(Math.round(estimate), biases, dice);
  const standing = standingOf(facts, context);
  const most = standing.ok ? (standing.value.maxBid ?? -1) : -1;
  const rival = rivalPrice(facts, context, worth / estimate, dice);
  const won = most > 0 && nextPrice(INCREMENTS, rival) <= most;
  const hammer = won ? nextPrice(INCREMENTS, rival) : rival;
  const forecast = forecastOf({
    at,
    late: false,
    estimator: 'The buyer',
    facts,
    context,
    hammer: { cents: hammer, ours: won },
    maxBid: most < 0 ? null : cents(most),
  });
  const outcome = won ? outcomeOf(forecast, worth, estimate, biases, dice, { at, now, id }) : undefined;
  const past: PastLot = {
    lot: id,
    title: `2020 Larkspur Hauler, ${id}`,
    venue: 'Sagebrush Fleet Sale',
    kind: 'Larkspur Hauler',
    forecast,
    happened: {
      ended: won ? 'won' : 'lost',
      at,
      date: dateIn(context.setup.store.zone, at),
      hammer,
      bid: most < 0 ? null : cents(most),
      canceled: outcome?.canceledAt !== undefined && outcome.canceledAt <= now,
      bought: outcome?.bought ?? null,
    },
  };
  const { sold, billed, canceledAt } = outcome ?? {};
  return {
    past,
    known: {
      ended: instant(at + HOUR),
      ...(sold !== undefined && { sold: instant(sold + HOUR), soldOn: sold }),
      ...(billed !== undefined && { billed }),
      ...(canceledAt !== undefined && canceledAt <= now && { canceled: canceledAt }),
    },
  };
}

const INCREMENTS = [{ fromCents: cents(0), stepCents: cents(2500) }];

function factsOf(likely: number, biases: Biases, dice: Dice): LotFacts {
  const { miles = 0.045, years = 0.11, asking = 0.97 } = biases;
  const comps = Array.from({ length: 3 }, (_, i) => {
    const more = 2 * dice.normal();
    const older = Math.round(1.3 * dice.normal());
    const isAsking = i === 0;
    const log = -miles * more - years * older + 0.07 * dice.normal() - (isAsking ? Math.log(asking) : 0);
    return {
      kind: isAsking ? 'asking' : 'sold',
      price: Math.round(likely * Math.exp(log)),
      miles: Math.max(0, Math.round(60_000 + 10_000 * more)),
      year: 2020 - older,
      // They teach the slopes; the estimate stays the buyer's own, so that its bias is the one that was put in.
      source: `${dice.uniform()}`,
    };
  });
  return lotFactsSchema.parse({
    year: 2020,
    miles: 60_000,
    venueId: 'sagebrush',
    retail: { low: Math.round(likely / REACH), likely, high: Math.round(likely * REACH) },
    recon: Object.entries(LINES).map(([label, amount]) => ({ label, amount: { likely: amount } })),
    comps: comps.map((comp) => ({ ...comp, leftOut: false })),
  });
}

/** What the strongest of the others bids: some share of what the car would be worth to us if our estimate were right. */
function rivalPrice(facts: LotFacts, context: PricingContext, right: number, dice: Dice): Cents {
  const deal = dealOf(facts, context);
  if (!deal.ok) return cents(100_000_00);
  const { titled, costs } = dealTotals(deal.value);
  const even = titled * right - costs - 30_000;
  const log = -0.1 + 0.09 * dice.normal();
  return nextPrice(INCREMENTS, cents(Math.max(0, Math.round(even * Math.exp(log)))));
}

function outcomeOf(
  forecast: PastLot['forecast'],
  worth: number,
  estimate: number,
  biases: Biases,
  dice: Dice,
  { at, now }: Place,
) {
  const { retail, purchase } = forecast;
  if (retail === null || purchase === null) return undefined;
  const canceledAt = dice.uniform() < (biases.canceled ?? 0.03) ? instant(at + 9 * DAY) : undefined;
  // A hazard that rises a little: Weibull of shape 1.25.
  const days = Math.max(1, Math.round((biases.median ?? 40) * (-Math.log2(dice.uniform())) ** 0.8));
  const soldAt = instant(at + days * DAY);
  const sigma = retail.sigma * (biases.spread ?? 1);
  const price =
    retail.mean * (worth / estimate) * (biases.retail ?? 1) * Math.exp(sigma * dice.normal() - sigma ** 2 / 2);
  const bills = purchase.lines.map(({ key, cost, label, cents: expected }) => {
    const times = cost === 'recon' ? (biases.recon?.[label] ?? 1) * Math.exp(0.25 * dice.normal() - 0.25 ** 2 / 2) : 1;
    return { key: `bill-${key}`, cost, label, cents: cents(Math.max(1, Math.round(expected * times))), against: key };
  });
  const lines = compareLines(purchase.lines, bills);
  const totalOf = (...kinds: readonly string[]) =>
    cents(bills.reduce((sum, bill) => (kinds.includes(bill.cost) ? sum + bill.cents : sum), 0));
  const isSold = canceledAt === undefined && soldAt <= now;
  const bought: Bought = {
    lines,
    hammer: totalOf('hammer'),
    fees: totalOf('fee'),
    transport: totalOf('transport'),
    recon: totalOf('recon'),
    interest: null,
    other: cents(0),
    allIn: totalOf('hammer', 'fee', 'transport'),
    days: isSold ? days : Math.floor((Math.min(now, canceledAt ?? now) - at) / DAY),
    sold: isSold,
    sale: isSold
      ? {
          cents: cents(Math.max(1, Math.round(price))),
          date: dateIn(forecast.context.setup.store.zone, soldAt),
          buyer: 'retail',
        }
      : null,
    lost: canceledAt === undefined ? null : cents(20_000),
  };
  return { bought, canceledAt, sold: isSold ? soldAt : undefined, billed: instant(at + 12 * DAY) };
}
