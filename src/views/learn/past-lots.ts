import { ownBids } from '../../domain/bid/own-bids.ts';
import type { PurchaseFolder } from '../../domain/books/folder/folder.ts';
import { boughtOf } from '../../domain/learn/bought-of.ts';
import type { PlanForecast } from '../../domain/learn/forecast.ts';
import { forecastOf } from '../../domain/learn/forecast-of.ts';
import type { Happened, PastLot } from '../../domain/learn/happened.ts';
import { lotTitle } from '../../domain/lot/car-name.ts';
import type { LotFacts, LotId } from '../../domain/lot/lot.ts';
import type { Cents } from '../../domain/money/cents.ts';
import { PPM } from '../../domain/money/rate.ts';
import type { Result } from '../../domain/sale/result.ts';
import type { Setup } from '../../domain/setup/setup.ts';
import { wholeSetup } from '../../domain/setup/starting-setup.ts';
import type { LocalDate } from '../../domain/time/local-date.ts';
import { dateIn } from '../../domain/time/wall-clock.ts';
import { type PricingContext, pricingContext } from '../../domain/worksheet/pricing-context.ts';
import { isCanceled } from '../../folds/bid-given.ts';
import type { LotState } from '../../folds/lot-state.ts';
import { biddingOf } from '../../journal/states/lot-bidding.ts';
import type { SetupState } from '../../journal/states/setup-state.ts';
import { eachLot, type LotApart } from '../lots-apart.ts';
import type { BelievedThen } from './believed-at-close.ts';

export interface PastLots {
  /** The latest first. */
  readonly past: readonly PastLot[];
  /** Lots of which nothing can be worked out. */
  readonly apart: readonly LotApart[];
}

/** Who works out setups that were in force, each once. */
export type ContextOf = (setup: SetupState) => PricingContext;

/** Contexts for setups that were in force; the same object gives the same context. */
export function contextsThen(zone: Setup['store']['zone']): ContextOf {
  const known = new Map<SetupState, PricingContext>();
  return (setup) => {
    const context = known.get(setup) ?? pricingContext(wholeSetup(setup, zone));
    known.set(setup, context);
    return context;
  };
}

/**
 * Every lot of which an end is noted: what was believed of it as its sale closed, and what happened.
 * @param beliefs what was believed of each then; a lot without any is left out
 * @param folders of the lots that were won
 * @param today in the store's zone
 */
export function pastLots(
  lots: readonly LotState[],
  beliefs: ReadonlyMap<LotId, BelievedThen>,
  folders: readonly PurchaseFolder[],
  contextOf: ContextOf,
  today: LocalDate,
): PastLots {
  const folderOf = new Map(folders.map((folder) => [folder.lot, folder]));
  const { done, apart } = eachLot(lots, (lot) => {
    const then = beliefs.get(lot.id);
    return then === undefined ? null : pastLot(lot, then, folderOf.get(lot.id), contextOf(then.setup), today);
  });
  const past = done.filter((one) => one !== null);
  return { past: past.sort(latestFirst), apart };
}

/** The latest first, as a comparison for sorting. */
export const latestFirst = (a: PastLot, b: PastLot): number =>
  b.happened.at - a.happened.at || (a.lot < b.lot ? 1 : -1);

function pastLot(
  lot: LotState,
  then: BelievedThen,
  folder: PurchaseFolder | undefined,
  context: PricingContext,
  today: LocalDate,
): PastLot | null {
  const noted = lot.sale?.result;
  if (noted === undefined) return null;
  const { result } = noted;
  const hammer = hammerOf(result);
  const { facts } = then.lot;
  const forecast = forecastOf({
    at: then.at,
    late: then.late,
    estimator: then.estimator,
    facts,
    context,
    plan: planOf(then.lot) ?? (noted.plannedCents === undefined ? undefined : { bid: noted.plannedCents }),
    hammer: hammer === null ? null : { cents: hammer, ours: result.ended === 'won' },
  });
  const happened: Happened = {
    ended: result.ended,
    at: noted.at,
    date: dateIn(context.setup.store.zone, noted.at),
    hammer,
    bid: ownBids(biddingOf(lot).bids).binding?.cents ?? null,
    canceled: isCanceled(lot),
    bought: folder === undefined ? null : boughtOf(folder, forecast, today),
  };
  return {
    lot: lot.id,
    title: lotTitle(facts),
    venue: context.venueOf(facts)?.name ?? facts.venueName ?? 'No venue named',
    kind: kindOf(facts),
    forecast,
    happened,
    purse: then.setup?.purse,
  };
}

/**
 * What the plan said when our last bid before the close was placed, with the chance that was given to that bid; undefined where
 * there was no plan for it.
 */
function planOf(lot: LotState): PlanForecast | undefined {
  if (lot.planChoice === 'skipped') return { bid: null };
  const last = biddingOf(lot).bids.findLast(({ action, cents }) => cents !== undefined && BIDS.has(action));
  if (last?.plannedCents === undefined) return undefined;
  const { plannedCents: bid, chancePpm } = last;
  return { bid, ...(chancePpm !== undefined && { chance: chancePpm / PPM }) };
}

const BIDS: ReadonlySet<string> = new Set(['proxy-placed', 'proxy-raised', 'proxy-cut', 'live-bid']);

function hammerOf(result: Result): Cents | null {
  return result.ended === 'won' || result.ended === 'lost' ? (result.hammerCents ?? null) : null;
}

const kindOf = ({ make, model }: LotFacts): string => [make, model].filter(Boolean).join(' ') || 'No make or model';
