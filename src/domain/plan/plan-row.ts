import { ENOUGH_CLOSINGS } from '../market/market.ts';
import { type Cents, roundedCents } from '../money/cents.ts';
import { type Bid, chanceUpTo, priceOf } from './bid-at.ts';
import { chanceWords } from './chance-words.ts';
import { type Exposure, exposureOf, fitsBeside, takesAt } from './exposure.ts';
import type { PlanReason, PlanRow, Takes, WinChance } from './plan.ts';
import type { PlanLot } from './plan-lot.ts';
import type { Prepared } from './prepare.ts';
import type { Purse } from './purse.ts';
import type { Run } from './run-plan.ts';
import { sayReason } from './say-reason.ts';

/** What rows are held against. */
export interface RowAgainst {
  readonly purse: Purse;
  /** Cash that may be promised now; whole cents. */
  readonly cash: number;
  /** Cash that may be promised by a moment; whole cents. */
  readonly cashAt: (at: number) => number;
  /** What every proxy that is in would take together. */
  readonly standing: Exposure;
}

/** A row for each lot of the purse, in closing order. */
export function planRows(run: Run, against: RowAgainst): readonly PlanRow[] {
  let toCome = run.prepared.flat().filter(({ bidding }) => bidding !== undefined).length;
  return run.prepared.flatMap((batch, number) => {
    toCome -= batch.filter(({ bidding }) => bidding !== undefined).length;
    return batch.map((each) => rowOf(each, run.bids.get(each), { ...against, number, together: batch.length, toCome }));
  });
}

/** A row for a lot that takes no part. */
export function rowOutside(lot: PlanLot, reason: PlanReason): PlanRow {
  return {
    lotId: lot.id,
    close: lot.close,
    maxBid: lot.maxBid,
    plannedBid: null,
    reason,
    sentence: sayReason(reason, null),
    chance: null,
    takes: null,
    fitsBesideProxies: true,
    batch: null,
  };
}

interface Around extends RowAgainst {
  readonly number: number;
  /** Lots in its batch. */
  readonly together: number;
  /** Lots that close after its batch. */
  readonly toCome: number;
}

function rowOf(prepared: Prepared, bid: Bid | undefined, around: Around): PlanRow {
  const { lot, bidding, closings } = prepared;
  if (bidding === undefined || bid === undefined) {
    return { ...rowOutside(lot, prepared.out ?? { is: 'no-max-bid' }), batch: around.number };
  }
  const plannedBid = priceOf(bidding.points, bid.at);
  const reason = reasonOf(prepared, bid, around);
  const line = Math.max(0, around.purse.line?.free ?? 0);
  const takes = plannedBid === null ? null : takesOf(lot, plannedBid, { cash: around.cashAt(lot.close), line });
  const own = exposureOf([lot], line);
  const { standing } = around;
  const others = { cash: standing.cash - own.cash, line: standing.line - own.line, cars: standing.cars - own.cars };
  return {
    lotId: lot.id,
    close: lot.close,
    maxBid: lot.maxBid,
    plannedBid,
    ...(lot.proxy !== undefined &&
      bid.free !== undefined &&
      bid.free < bid.at && { withoutProxy: priceOf(bidding.points, bid.free) }),
    reason,
    sentence: sayReason(reason, plannedBid),
    chance: chanceOf(prepared, bid.at < 0 ? bidding.points.prices.length - 1 : bid.at, closings),
    takes,
    fitsBesideProxies: fitsBeside(takes, others, around.cash, around.purse),
    batch: around.number,
  };
}

function takesOf(lot: PlanLot, price: Cents, left: { readonly cash: number; readonly line: number }): Takes | null {
  const way = takesAt(lot, price, left);
  return way === undefined ? null : { cash: roundedCents(way.cash), line: roundedCents(way.line) };
}

function chanceOf({ bidding }: Prepared, at: number, closings: number): WinChance | null {
  if (bidding === undefined || closings < ENOUGH_CLOSINGS) return null;
  const chance = chanceUpTo(bidding.points, at);
  return { chance, closings, words: chanceWords(chance) };
}

function reasonOf(
  { lot, bidding, closings }: Prepared,
  { at, against, free }: Bid,
  { together, toCome }: Around,
): PlanReason {
  const atMax = bidding !== undefined && at === bidding.points.prices.length - 1;
  if (lot.choice === 'pinned' && atMax) return { is: 'pinned' };
  const price = bidding === undefined ? null : priceOf(bidding.points, at);
  if (lot.choice === 'skipped' || (price !== null && price > (lot.maxBid ?? 0))) return { is: 'proxy' };
  if (lot.choice === 'plan-ignored' && atMax) return { is: 'plan-ignored' };
  if (closings < ENOUGH_CLOSINGS && atMax) return { is: 'few-closings', closings, needed: ENOUGH_CLOSINGS };
  switch (against.is) {
    case 'nothing':
      return { is: 'at-max' };
    case 'short':
      return { is: 'purse-ends', short: against.of };
    case 'held':
      return { is: at >= 0 && free !== undefined && lot.proxy !== undefined ? 'proxy' : 'held-for-pinned' };
    case 'others':
      return { is: 'closes-together', lots: together };
    case 'worth': {
      if (bidding !== undefined && at >= 0 && at === bidding.bound) return { is: 'proxy' };
      const [tied, worth] = [roundedCents(against.tied), roundedCents(against.worth)];
      return { is: 'worth-more-later', tied, worth, lotsToCome: toCome };
    }
  }
}
