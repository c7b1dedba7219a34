import { attempt } from '../../domain/attempt.ts';
import type { BidGiven, BidState, OpenBid } from '../../domain/bid/bid-state.ts';
import { bidStateOf, openBid } from '../../domain/bid/bid-state-of.ts';
import { stopOf } from '../../domain/bid/stop-of.ts';
import { type Cents, ZERO } from '../../domain/money/cents.ts';
import type { Increments } from '../../domain/price/increments.ts';
import type { Setup } from '../../domain/setup/setup.ts';
import { bidGiven } from '../../folds/bid-given.ts';
import type { LotState } from '../../folds/lot-state.ts';
import { NO_PLAN, type PlannedBids, plannedFor } from './planned-bids.ts';
import type { Standing } from './standing.ts';

/** What the bids on lots really are, under one setup. Every screen, notice and file asks here. */
export interface Bids {
  /** At a moment. */
  readonly at: (lot: LotState, now: number) => BidState;
  /** As long as it has not closed and has no result; for what is said before anybody knows when it will be read. */
  readonly open: (lot: LotState) => OpenBid;
}

/**
 * @param standingOf where the max bid comes from; asked only for lots of which something hangs on it
 * @param planned what the plan bids
 */
export function bidsUnder(
  setup: Pick<Setup, 'venues'>,
  standingOf: (lot: LotState) => Standing,
  planned: PlannedBids = NO_PLAN,
): Bids {
  const stepsOf = incrementsUnder(setup);
  const given = remembered(
    (lot): BidGiven =>
      bidGiven(lot, {
        get maxBid() {
          return maxBidOf(standingOf(lot));
        },
        planned: plannedFor(planned, lot)?.bid,
        increments: stepsOf(lot),
      }),
  );
  const open = remembered((lot) => orLoud(() => openBid(given(lot), Number.NEGATIVE_INFINITY)));
  return {
    open,
    at: (lot, now) =>
      orLoud(() => {
        const known = given(lot);
        const { close } = known;
        // While it is open, only two readings of its close make the state hang on the time.
        const plain = known.result === undefined && (close === undefined || close.first > now);
        return plain ? open(lot) : bidStateOf(known, now);
      }),
  };
}

/** A bid that can't be worked out, by a mistake of ours, is as loud as none: somebody has to look, and no other lot waits. */
function orLoud<State extends BidState>(work: () => State): State | OpenBid {
  const state = attempt(work);
  return state.ok ? state.value : NOT_WORKED_OUT;
}

const NOT_WORKED_OUT: OpenBid = {
  is: 'none',
  loud: true,
  asks: [{ ask: 'no-max-bid' }],
  room: { is: 'unknown' },
  than: 'max',
  sealed: false,
  own: {},
  mayHaveClosed: false,
};

/** Null when no price works; undefined when the max bid can't be worked out. */
export const maxBidOf = ({ maxBid, missing }: Pick<Standing, 'maxBid' | 'missing'>): Cents | null | undefined =>
  missing.length > 0 ? undefined : maxBid;

/**
 * Where to stop: the max bid, or the plan's bid where there is a plan and that is less. Null when nothing is to be bid;
 * undefined when the max bid can't be worked out.
 */
export const stopOfStanding = (standing: Pick<Standing, 'maxBid' | 'missing' | 'planned'>): Cents | null | undefined =>
  stopOf({ maxBid: maxBidOf(standing), planned: standing.planned }).at;

/** The steps in which a lot's sale goes: its own, else its venue's; undefined where nobody knows them. */
export function incrementsUnder({ venues }: Pick<Setup, 'venues'>): (lot: LotState) => Increments | undefined {
  const byId = new Map(venues.map((venue) => [venue.id, venue]));
  const byName = new Map(venues.map((venue) => [venue.name.trim().toLowerCase(), venue]));
  return ({ facts: { increment, venueId, venueName } }) => {
    if (increment !== undefined) return [{ fromCents: ZERO, stepCents: increment }];
    const venue = venueId === undefined ? byName.get(venueName?.trim().toLowerCase() ?? '') : byId.get(venueId);
    return venue?.increments;
  };
}

function remembered<Value>(find: (lot: LotState) => Value): (lot: LotState) => Value {
  const known = new WeakMap<LotState, { readonly value: Value }>();
  return (lot) => {
    const before = known.get(lot) ?? { value: find(lot) };
    known.set(lot, before);
    return before.value;
  };
}
