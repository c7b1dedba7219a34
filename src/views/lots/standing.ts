import { attempt } from '../../domain/attempt.ts';
import type { Cents } from '../../domain/money/cents.ts';
import type { Outcome } from '../../domain/outcome.ts';
import type { Setup } from '../../domain/setup/setup.ts';
import { type DealProblem, type DealRefusal, incomplete } from '../../domain/worksheet/deal-of.ts';
import { pricingContext } from '../../domain/worksheet/pricing-context.ts';
import { standingOf, uncappedStandingOf, type Standing as Worked } from '../../domain/worksheet/worksheet-of.ts';
import { hasBid } from '../../folds/bid-given.ts';
import type { LotState } from '../../folds/lot-state.ts';
import { type Bids, bidsUnder } from './bids.ts';
import { NO_PLAN, type Planned, type PlannedBids, plannedFor } from './planned-bids.ts';

/** What a list shows of a lot's worksheet: the two figures, and in words whatever is missing for them. */
export interface Standing extends Worked {
  /** What to do before there is a figure; empty when the worksheet could be worked out. */
  readonly missing: readonly string[];
  /** Why, for each thing that is missing. */
  readonly needs?: readonly DealProblem['reason'][];
  /** What the plan for the purse bids; null when it leaves the lot out, absent where there is no plan for it. */
  readonly planned?: Cents | null;
  /** The chance that the planned bid wins, in millionths, where there is one. */
  readonly plannedChance?: number;
  /** Why it can't be worked out though nothing is missing, to stand behind a colon. */
  readonly why?: string;
}

/** What is worked out of a lot, when somebody asks. */
export interface LotWorks {
  /** As the worksheet has it, the cap on the chance of a loss included: a millisecond or two a lot. */
  readonly of: (lot: LotState) => Standing;
  /** What their bids really are, held against those max bids. */
  readonly bids: Bids;
}

/** The standings of lots under one setup and one plan, each worked out once. */
export interface Standings extends LotWorks {
  /** The same if it is known already, else without that cap: several times quicker, for sorting lots that are out of sight. */
  readonly rough: LotWorks;
  /** As `of` gives it, if it has been worked out. */
  readonly known: (lot: LotState) => Standing | undefined;
  /** Works out standings until `enough` says so. Returns whether all of `lots` are known now. */
  readonly workAhead: (lots: readonly LotState[], enough: () => boolean) => boolean;
}

/** @param planned what the plan bids; nothing while there is no plan */
export function standingsUnder(setup: Setup, planned: PlannedBids = NO_PLAN): Standings {
  const worked = workedUnder(setup);
  const known = new WeakMap<LotState, Standing>();
  const rough = new WeakMap<LotState, Standing>();
  const withOwn = (lot: LotState, standing: Standing) => withPlan(standing, plannedFor(planned, lot));

  const of = (lot: LotState): Standing => remembered(known, lot, () => withOwn(lot, worked.of(lot)));

  const soFar = (lot: LotState): Standing =>
    worked.isKnown(lot) ? of(lot) : remembered(rough, lot, () => withOwn(lot, worked.soFar(lot)));

  return {
    of,
    bids: bidsUnder(setup, of, planned),
    // A bid that is in is held against nothing less than its max bid: nobody is to be told of an alarm that is none.
    rough: { of: soFar, bids: bidsUnder(setup, (lot) => (hasBid(lot) ? of(lot) : soFar(lot)), planned) },
    known: (lot) => (worked.isKnown(lot) ? of(lot) : undefined),
    workAhead(lots, enough) {
      for (const lot of lots) {
        if (worked.isKnown(lot)) continue;
        if (enough()) return false;
        of(lot);
      }
      return true;
    },
  };
}

/** The standings without any plan, which take their time: a plan that is made anew leaves them as they are. */
interface WorkedStandings {
  readonly of: (lot: LotState) => Standing;
  readonly soFar: (lot: LotState) => Standing;
  readonly isKnown: (lot: LotState) => boolean;
}

const workedBefore = new WeakMap<Setup, WorkedStandings>();

function workedUnder(setup: Setup): WorkedStandings {
  const before = workedBefore.get(setup);
  if (before !== undefined) return before;
  // Of a setup that can't be used, each lot says so: none loses its close for it.
  const context = attempt(() => pricingContext(setup));
  const under = (lot: LotState, work: typeof standingOf) =>
    inWords(context.ok ? work(lot.facts, context.value) : incomplete([context]));
  const known = new WeakMap<LotState, Standing>();
  const rough = new WeakMap<LotState, Standing>();
  const worked: WorkedStandings = {
    of: (lot) => remembered(known, lot, () => under(lot, standingOf)),
    soFar: (lot) => known.get(lot) ?? remembered(rough, lot, () => under(lot, uncappedStandingOf)),
    isKnown: (lot) => known.has(lot),
  };
  workedBefore.set(setup, worked);
  return worked;
}

/** What to do first, short enough for a row; the worksheet says the rest. */
const MISSING_WORDS: Record<Exclude<DealProblem['reason'], 'not-meant' | 'cant-work-out'>, string> = {
  'no-retail': 'Enter retail estimate',
  'unread-cell': 'Fix what could not be read',
  'no-venue': 'Choose the venue',
  'unknown-venue': 'Set up the venue',
  'unknown-title': 'Set up the title',
  'unconfirmed-title': 'Confirm the title’s % of retail',
  'no-fees': 'Enter the venue’s buy fees',
  'no-transport': 'Enter transport',
  'unknown-fees': 'Set up the venue’s fees',
  'no-edition': 'Add rates for that date',
  'needs-date': 'Enter closing time',
};

function inWords(worked: Outcome<Worked, DealRefusal>): Standing {
  if (worked.ok) return { ...worked.value, missing: [] };
  const why = worked.problems.find(({ short }) => short !== undefined)?.short;
  return {
    maxBid: null,
    headroom: null,
    missing: [...new Set(worked.problems.map(missingWords))],
    needs: worked.problems.map(({ reason }) => reason),
    ...(why !== undefined && { why }),
  };
}

/** A plan is made from max bids, so it says nothing of a lot that has none, and never more than a max bid that fell since. */
function withPlan(standing: Standing, planned: Planned | undefined): Standing {
  if (planned === undefined || standing.maxBid === null) return standing;
  const { bid, chance } = planned;
  if (bid !== null && bid > standing.maxBid) return { ...standing, planned: standing.maxBid };
  return { ...standing, planned: bid, ...(chance !== undefined && { plannedChance: chance }) };
}

const missingWords = ({ reason, short }: DealProblem): string =>
  reason === 'not-meant' || reason === 'cant-work-out' ? `Can’t be worked out: ${short}` : MISSING_WORDS[reason];

function remembered(known: WeakMap<LotState, Standing>, lot: LotState, workOut: () => Standing): Standing {
  const before = known.get(lot);
  if (before !== undefined) return before;
  const standing = workOut();
  known.set(lot, standing);
  return standing;
}
