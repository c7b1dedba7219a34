import { CORRECTION_IDS, type CorrectionId, type Corrections } from '../../correction/corrections.ts';
import type { Cents } from '../../money/cents.ts';
import type { Setup } from '../../setup/setup.ts';
import { mondayOf, startOfDay } from '../../time/calendar-day.ts';
import type { Instant } from '../../time/instant.ts';
import { dateIn } from '../../time/wall-clock.ts';
import { type PricingContext, pricingContext } from '../../worksheet/pricing-context.ts';
import { standingOf } from '../../worksheet/worksheet-of.ts';
import type { PastLot } from '../happened.ts';
import { changeOf } from './effect.ts';
import type { CorrectionEvidence } from './evidence.ts';
import { findingOf } from './finding.ts';
import { actualProfit, type TimedLot } from './win-outcomes.ts';

/** What would have become of one past lot. */
export type ReplayOutcome =
  /** As it was. */
  | 'same'
  /** It was won at a price that would have been above the max bid. */
  | 'not-bought'
  /** It was lost at a price that the max bid would have reached; for how much it would have gone, nobody knows. */
  | 'maybe-won'
  /** The max bid would have been higher, and nobody knows for how much it went. */
  | 'unknown';

export interface ReplayedLot {
  readonly past: PastLot;
  /** Whether there was evidence enough by then for the correction to be on. */
  readonly wasOn: boolean;
  readonly before: Cents | null;
  readonly after: Cents | null;
  readonly outcome: ReplayOutcome;
  /** Of a lot that was won: what it really left; null while that is not known. */
  readonly profit: Cents | null;
}

/**
 * Goes through past lots with corrections switched on all the time, each with the value of that week: it is learned anew
 * on each Monday, in the store's zone, from what was written down before that. Yields how many lots are done.
 * @param lots in any order; those that were written down after their sale are left out
 */
export function* replayOf(
  lots: readonly TimedLot[],
  evidence: CorrectionEvidence,
  ids: readonly CorrectionId[],
): Generator<number, readonly ReplayedLot[]> {
  const contextThen = contextsByWeek(evidence, ids);
  const replayed: ReplayedLot[] = [];
  for (const [done, timed] of lots.entries()) {
    yield done;
    const { past } = timed;
    const { forecast } = past;
    if (forecast.late || forecast.maxBid === undefined) continue;
    const { context, wasOn } = contextThen(forecast.context, forecast.at);
    const standing = wasOn ? standingOf(forecast.facts, context) : undefined;
    if (standing !== undefined && !standing.ok) continue;
    const before = forecast.maxBid;
    const after = standing === undefined ? before : standing.value.maxBid;
    replayed.push({
      past,
      wasOn,
      before,
      after,
      outcome: outcomeOf(past, before, after),
      profit: past.happened.ended === 'won' ? actualProfit(timed) : null,
    });
  }
  return replayed;
}

function outcomeOf({ happened, forecast }: PastLot, before: Cents | null, after: Cents | null): ReplayOutcome {
  const { ended, hammer, bid } = happened;
  const [was, is] = [before ?? -1, after ?? -1];
  // One who paid more than his max bid would have done so again.
  if (ended === 'won') return hammer !== null && is < hammer && hammer <= was ? 'not-bought' : 'same';
  if (bid === null || is <= was || ended === 'withdrawn') return 'same';
  const needed = forecast.deal?.price;
  if (ended !== 'lost' || hammer === null || needed === undefined) return 'unknown';
  return was < needed && needed <= is ? 'maybe-won' : 'same';
}

function contextsByWeek(evidence: CorrectionEvidence, ids: readonly CorrectionId[]) {
  const known = new Map<Setup, Map<Instant, { readonly context: PricingContext; readonly wasOn: boolean }>>();
  // The winner's haircut is what the others leave over, so it is learned last.
  const inOrder = CORRECTION_IDS.filter((id) => ids.includes(id));
  return ({ given }: PricingContext, at: Instant) => {
    const { zone } = given.store;
    const now = startOfDay(mondayOf(dateIn(zone, at)), zone);
    const weeks = known.get(given) ?? new Map();
    known.set(given, weeks);
    const made = weeks.get(now) ?? madeAt(now);
    weeks.set(now, made);
    return made;

    function madeAt(moment: Instant) {
      let corrections: Corrections = { ...given.corrections };
      let wasOn = false;
      for (const id of inOrder) {
        const { enough, value } = findingOf(id, { evidence, setup: { ...given, corrections }, now: moment });
        corrections = { ...corrections, ...value };
        wasOn ||= enough;
      }
      return { context: pricingContext({ ...given, corrections }), wasOn };
    }
  };
}

/** A replay in sums. */
export interface ReplaySums {
  /** Lots at which the correction was on, and how many of their max bids would have been others. */
  readonly on: number;
  readonly moved: number;
  readonly averageChange: number;
  readonly wins: number;
  readonly notBought: readonly ReplayedLot[];
  readonly maybeWon: readonly ReplayedLot[];
  readonly unknown: number;
  /** What the wins left, as far as known, and what those left that would still have been bought. */
  readonly profit: number;
  readonly profitKept: number;
  /** Wins whose profit is not known yet. */
  readonly open: number;
}

export function replaySums(lots: readonly ReplayedLot[]): ReplaySums {
  const on = lots.filter(({ wasOn }) => wasOn);
  const moved = on.filter((one) => changeOf(one) !== 0);
  const wins = on.filter(({ past }) => past.happened.ended === 'won');
  const notBought = wins.filter(({ outcome }) => outcome === 'not-bought');
  const profitOf = (some: readonly ReplayedLot[]) => some.reduce((sum, { profit }) => sum + (profit ?? 0), 0);
  return {
    on: on.length,
    moved: moved.length,
    averageChange: on.length === 0 ? 0 : on.reduce((sum, one) => sum + changeOf(one), 0) / on.length,
    wins: wins.length,
    notBought,
    maybeWon: on.filter(({ outcome }) => outcome === 'maybe-won'),
    unknown: on.filter(({ outcome }) => outcome === 'unknown').length,
    profit: profitOf(wins),
    profitKept: profitOf(wins) - profitOf(notBought),
    open: wins.filter(({ profit }) => profit === null).length,
  };
}
