import type { LotFacts, LotId } from '../domain/lot/lot.ts';
import { type Cents, cents } from '../domain/money/cents.ts';
import type { BidAction } from '../domain/sale/bid-action.ts';
import type { Result } from '../domain/sale/result.ts';
import type { Setup } from '../domain/setup/setup.ts';
import { addDays } from '../domain/time/calendar-day.ts';
import { type Instant, instant } from '../domain/time/instant.ts';
import type { LocalDate } from '../domain/time/local-date.ts';
import { DAY, HOUR, MINUTE } from '../domain/time/units.ts';
import { pricingContext } from '../domain/worksheet/pricing-context.ts';
import { standingOf } from '../domain/worksheet/worksheet-of.ts';
import type { Happening } from '../journal/happening.ts';
import type { NewLot } from '../journal/happenings/watching.ts';
import { closeInStoreTime, type DemoVenue } from './demo-closes.ts';

/** What happened to one lot, in the order in which it was written down. */
export interface DemoSale {
  readonly lot: LotId;
  readonly happenings: readonly Happening[];
}

/** The weeks before this one: lots that closed, with what was bid and how they ended. */
export interface DemoPast {
  readonly lots: readonly NewLot[];
  readonly sales: readonly DemoSale[];
}

interface PastOrder {
  readonly setup: Setup;
  readonly now: Instant;
  /** The Saturday whose rush is ahead, and today by the store's calendar. */
  readonly saturday: LocalDate;
  readonly today: LocalDate;
  /** The facts of the nth lot at a venue, closing then. */
  readonly factsOf: (i: number, venue: DemoVenue, close: LotFacts['close']) => LotFacts;
  /** A car of this week that was at a sale before: it did not sell then. */
  readonly again: LotFacts;
  readonly ids: () => LotId;
}

const WEEKS = 4;
const A_WEEK = 9;
const VENUES: readonly DemoVenue[] = ['saguaro', 'saltmarsh', 'caliche', 'fogline'];
/** Its place among the past lots: one of those that did not sell. */
const SOLD_AGAIN = 16;

/** Four invented weeks of sales: most bids lost, some won, a few never sold, and the last three closings still to be noted. */
export function demoPast({ setup, now, saturday, today, factsOf, again, ids }: PastOrder): DemoPast {
  const context = pricingContext(setup);
  // On a Saturday whose busy hours have begun, the week before it is the last one that is over.
  const after = addDays(saturday, -7) < today ? saturday : addDays(saturday, -7);
  const lots: NewLot[] = [];
  const sales: DemoSale[] = [];
  for (let n = 0; n < WEEKS * A_WEEK; n++) {
    const day = addDays(after, -7 * (WEEKS - Math.floor(n / A_WEEK)) - (n % 3 === 2 ? 1 : 0));
    const venue = VENUES[(n * 3) % VENUES.length] ?? 'saguaro';
    const time = `${10 + (n % A_WEEK)}:${n % 2 === 0 ? '05' : '40'}`;
    const close = closeInStoreTime(venue, day, time, now);
    const { proxy: _, priceNow, ...own } = factsOf(300 + n, venue, close);
    const facts = n === SOLD_AGAIN ? { ...own, ...again, notes: 'Seller wanted more than it was worth.' } : own;
    const standing = standingOf(facts, context);
    const maxBid = standing.ok ? standing.value.maxBid : null;
    const lot = ids();
    lots.push({ id: lot, facts: { ...facts, ...(priceNow !== undefined && { priceNow }) }, evidence: {} });
    if (n >= WEEKS * A_WEEK - 3) continue;
    sales.push({ lot, happenings: [...happeningsOf(n, maxBid, close.instant), ...stepsSince(n, close.instant, now)] });
  }
  return { lots, sales };
}

function happeningsOf(n: number, maxBid: Cents | null, close: Instant): Happening[] {
  const figure = maxBid ?? cents(900_000);
  const steps: Happening[] = [];
  if (n % 4 !== 3) steps.push(bid('proxy-placed', share(figure, 0.9), close - 26 * HOUR));
  if (n % 6 === 2) steps.push(bid('proxy-raised', share(figure, 0.97), close - 3 * HOUR));
  if (n % 5 === 1) steps.push(bid('live-bid', share(figure, 0.98), close - MINUTE));
  const result = resultOf(n, figure);
  const by = n % 5 === 1 ? ('live' as const) : steps.length > 0 ? ('proxy' as const) : undefined;
  const noted = { at: instant(close), maxBidCents: maxBid, ...(by && { by }) };
  // Once the hammer price was heard wrong first: the correction is an entry of its own.
  if (n % 17 === 4 && result.ended === 'lost')
    steps.push({ kind: 'result-noted', result: { ended: 'lost' }, ...noted });
  steps.push({ kind: 'result-noted', result, ...noted });
  return steps;
}

/** What was done about a win since, as far as its day has come. */
function stepsSince(n: number, close: Instant, now: Instant): Happening[] {
  if (n % 7 !== 3) return [];
  return STEPS_BY_DAY.map(([step, days]) => ({ step, at: close + days * DAY }))
    .filter(({ at }) => at <= now)
    .map(({ step, at }) => ({ kind: 'step-noted', step, done: true, at: instant(at) }));
}

const STEPS_BY_DAY = [
  ['pay', 1],
  ['fund', 1],
  ['transport', 2],
  ['deliver', 4],
  ['inspect', 4.5],
  ['title', 17],
] as const;

function resultOf(n: number, figure: Cents): Result {
  if (n % 7 === 3) return { ended: 'won', hammerCents: share(figure, 0.88) };
  if (n % 11 === 5) return { ended: 'not-sold', highCents: share(figure, 0.8) };
  if (n % 13 === 6) return { ended: 'lost' };
  if (n === 20) return { ended: 'withdrawn' };
  if (n === 30) return { ended: 'pending', bidCents: share(figure, 0.84) };
  // The winner went a little past us mostly, and once in a while would have been beaten.
  return { ended: 'lost', hammerCents: share(figure, 0.93 + 0.045 * (n % 6)) };
}

function bid(action: BidAction['action'], amount: Cents, at: number): Happening {
  return { kind: 'bid-noted', bid: { action, cents: amount, at: instant(at) } };
}

const share = (amount: Cents, part: number): Cents => cents(Math.round((amount * part) / 10_000) * 10_000);
