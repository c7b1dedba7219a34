import type { LotFacts, LotId } from '../domain/lot/lot.ts';
import { type Cents, cents } from '../domain/money/cents.ts';
import { PPM } from '../domain/money/rate.ts';
import type { Result } from '../domain/sale/result.ts';
import type { Setup } from '../domain/setup/setup.ts';
import { addDays } from '../domain/time/calendar-day.ts';
import { type Instant, instant } from '../domain/time/instant.ts';
import type { LocalDate } from '../domain/time/local-date.ts';
import { DAY, HOUR } from '../domain/time/units.ts';
import { pricingContext } from '../domain/worksheet/pricing-context.ts';
import { standingOf } from '../domain/worksheet/worksheet-of.ts';
import type { Happening } from '../journal/happening.ts';
import type { NewLot } from '../journal/happenings/watching.ts';
import { closeInStoreTime, type DemoVenue } from './demo-closes.ts';
import { even } from './demo-even.ts';
import { type SeasonBooking, seasonBooks } from './demo-season-books.ts';

/** One past lot with all that became of it, each piece with the moment at which it was written down. */
export interface SeasonLot {
  readonly lot: NewLot;
  readonly addedAt: Instant;
  readonly notes: readonly { readonly at: Instant; readonly happening: Happening }[];
  readonly booked: readonly SeasonBooking[];
}

interface SeasonOrder {
  readonly setup: Setup;
  readonly now: Instant;
  readonly today: LocalDate;
  /** The facts of the nth lot at a venue, closing then. */
  readonly factsOf: (i: number, venue: DemoVenue, close: LotFacts['close']) => LotFacts;
  readonly ids: () => LotId;
}

const WEEKS = 16;
const A_WEEK = 6;
const VENUES: readonly DemoVenue[] = ['saguaro', 'saltmarsh', 'caliche', 'fogline'];
/** The weeks that the list itself shows come after it. */
const LATEST_WEEK = 6;

/**
 * Some months of invented sales before the weeks that the lists show, for Learn: bids with the chance that was given to them, what
 * won, what cars cost and brought. Retail of one model was estimated too high, tires cost more than thought, one venue bills
 * a fee that is not in its schedule, and one car waits too long.
 */
export function demoSeason({ setup, now, today, factsOf, ids }: SeasonOrder): readonly SeasonLot[] {
  const context = pricingContext(setup);
  return Array.from({ length: WEEKS * A_WEEK }).map((_gap, n): SeasonLot => {
    const day = addDays(today, -7 * (LATEST_WEEK + WEEKS - Math.floor(n / A_WEEK)) + (n % 3));
    const venue = VENUES[(n * 3 + Math.floor(n / 5)) % VENUES.length] ?? 'saguaro';
    const close = closeInStoreTime(venue, day, `${10 + (n % 6)}:20`, now);
    const {
      proxy: _,
      priceNow: __,
      titleId: ___,
      claims: ____,
      sealed: _____,
      ...own
    } = factsOf(400 + n, venue, close);
    const facts: LotFacts = { ...own, titleId: 'clean', retail: own.retail ?? { likely: cents(2_400_000) } };
    const standing = standingOf(facts, context);
    const maxBid = (standing.ok ? standing.value.maxBid : null) ?? cents(900_000);
    const lot = ids();
    const chance = 0.1 + 0.55 * even(n, 1);
    const planned = share(maxBid, 0.93 + 0.07 * chance);
    const result = resultOf(n, chance, planned, maxBid);
    // A week's lots come in together, and their bids are placed together.
    const addedAt = instant(Date.parse(`${addDays(day, -(n % 3) - 2)}T18:00Z`));
    const bid = { action: 'proxy-placed' as const, cents: planned, at: instant(addedAt + HOUR) };
    const placed: Happening = {
      kind: 'bid-noted',
      bid: { ...bid, maxBidCents: maxBid, plannedCents: planned, chancePpm: Math.round(chance * PPM) as never },
    };
    const ended: Happening = { kind: 'result-noted', result, at: close.instant, maxBidCents: maxBid, by: 'proxy' };
    const missed = n % 29 === 11;
    const win = result.ended === 'won' ? { lot, facts, hammer: result.hammerCents, day } : null;
    return {
      lot: { id: lot, facts, evidence: {} },
      addedAt,
      notes: [
        ...(missed ? [] : [{ at: bid.at, happening: placed }]),
        { at: instant(close.instant + HOUR), happening: ended },
        ...(win === null ? [] : stepsOf(close.instant)),
      ],
      booked: win === null ? [] : seasonBooks(win, n, context, now),
    };
  });
}

/** Won about as often as was said; what others bought went a little past our bid, once in a while below our max bid. */
function resultOf(n: number, chance: number, planned: Cents, maxBid: Cents): Result {
  if (n % 29 === 11) return { ended: 'lost', hammerCents: share(maxBid, 0.9) };
  if (even(n, 2) < chance * 0.92) return { ended: 'won', hammerCents: share(planned, 0.9 + 0.1 * even(n, 3)) };
  if (n % 17 === 8) return { ended: 'not-sold', highCents: share(planned, 0.85) };
  if (n % 23 === 5) return { ended: 'lost' };
  return { ended: 'lost', hammerCents: share(planned, 1.01 + 0.16 * even(n, 4)) };
}

const STEPS = [
  ['pay', 1],
  ['fund', 1],
  ['transport', 2],
  ['deliver', 5],
  ['inspect', 5],
  ['title', 15],
] as const;

/** Written down together, once the title is there. */
const stepsOf = (close: Instant): SeasonLot['notes'] =>
  STEPS.map(([step, days]) => ({
    at: instant(close + 15 * DAY),
    happening: { kind: 'step-noted', step, done: true, at: instant(close + days * DAY) },
  }));

const share = (amount: Cents, part: number): Cents => cents(Math.round((amount * part) / 10_000) * 10_000);
