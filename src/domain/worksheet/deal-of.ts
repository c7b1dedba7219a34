import type { Appraisal } from '../deal/beliefs.ts';
import type { Deal, Funding } from '../deal/deal.ts';
import { editionAt } from '../fees/edition-at.ts';
import type { Charge, FeeTable } from '../fees/fee-schedule.ts';
import type { LotFacts } from '../lot/lot.ts';
import { notMeant } from '../lot/not-meant.ts';
import { type UnreadCell, unreadSentence } from '../lot/unread-cell.ts';
import { ZERO } from '../money/cents.ts';
import { factor, PPM, ppm } from '../money/rate.ts';
import { type Outcome, ok, type Refusal } from '../outcome.ts';
import type { TitleBrand } from '../setup/money-rules.ts';
import { isUnconfirmed } from '../setup/title-figure.ts';
import { isTransportUnsaid } from '../setup/transport-cost.ts';
import type { Venue } from '../setup/venue.ts';
import type { LocalDate } from '../time/local-date.ts';
import { dateIn } from '../time/wall-clock.ts';
import { costLines } from './cost-lines.ts';
import { isBillUnsaid, noFees, noTransport, unconfirmedTitle } from './holes.ts';
import type { PricingContext } from './pricing-context.ts';
import { withHaircut } from './with-haircut.ts';

/** One thing that is missing or does not fit, as a sentence that says what to do. */
export interface DealProblem extends Refusal {
  readonly reason:
    | 'no-retail'
    | 'unread-cell'
    | 'no-venue'
    | 'unknown-venue'
    | 'unknown-title'
    | 'unconfirmed-title'
    | 'no-fees'
    | 'no-transport'
    | 'unknown-fees'
    | 'no-edition'
    | 'needs-date'
    | 'not-meant'
    | 'cant-work-out';
  /** The fact that it is about, where there is one to be settled. */
  readonly field?: UnreadCell['field'];
  /** Why it can't be worked out, to stand behind a colon; of the last two reasons only. */
  readonly short?: string;
}

/** Why a lot has no deal: everything that is missing, so that the user can fix all of it in one go. */
export interface DealRefusal extends Refusal {
  readonly reason: 'incomplete';
  readonly problems: readonly DealProblem[];
}

/** A refusal that says all of its problems in one go. */
export function incomplete(problems: readonly DealProblem[]): { readonly ok: false } & DealRefusal {
  return { ok: false, reason: 'incomplete', message: problems.map(({ message }) => message).join(' '), problems };
}

/** What of a lot's facts can't be meant, as problems of its deal. */
export const notMeantOf = (facts: LotFacts): readonly DealProblem[] =>
  notMeant(facts).map(({ message, short }) => ({ reason: 'not-meant', message, short }));

/**
 * From what is known of a lot and the setup to the numbers of a deal.
 * @param appraisal what is believed beyond the stated facts
 */
export function dealOf(
  facts: LotFacts,
  context: PricingContext,
  appraisal: Appraisal = {},
): Outcome<Deal, DealRefusal> {
  const { setup } = context;
  const problems: DealProblem[] = [...notMeantOf(facts)];
  const retail = retailOf(facts, appraisal);
  if (retail === undefined) problems.push(NO_RETAIL);
  for (const cell of facts.unread ?? [])
    problems.push({ reason: 'unread-cell', message: unreadSentence(cell), field: cell.field });
  const title = titleOf(facts, context, problems);
  const venue = venueOf(facts, context, problems);
  const bill = venue && billOf(facts, venue, context, problems);
  if (venue !== undefined && facts.transport === undefined && isTransportUnsaid(venue))
    problems.push(noTransport(venue));
  if (retail === undefined || venue === undefined || bill === undefined || problems.length > 0) {
    return incomplete(problems);
  }
  const { low, high } = retail;
  const kind = fundingKind(facts, context, title);
  const hold = (appraisal.hold ?? context.hold)(kind);
  const plan = setup.carrying.floorPlan;
  const deal: Deal = {
    retail: retail.mean,
    ...((low ?? high) !== undefined && { retailRange: { low: low ?? retail.mean, high: high ?? retail.mean } }),
    titleKeeps: title?.keepsPpm ?? ppm(PPM),
    ...(title && { titleName: title.name }),
    costs: [...(appraisal.costs ?? []), ...costLines(facts, setup, venue.transport)],
    ...bill,
    funding: {
      kind,
      advance: plan?.advancePpm ?? ppm(0),
      advanceOnFees: plan?.advanceOnFees ?? false,
      ...(plan?.advanceCapCents !== undefined && { advanceCap: plan.advanceCapCents }),
      floorFactor: hold.floorFactor,
      cashFactor: hold.cashFactor,
      flatHold: hold.flatHold,
    },
    rule: {
      dollars: setup.rules.dollarsCents,
      shareOfRetail: setup.rules.shareOfRetailPpm,
      // Past a hundred times the cash the rule refuses everything anyway.
      perCash: factor(Math.min(100, (setup.rules.perCashDayPpm / PPM) * hold.expectedDays)),
    },
    unwind: {
      chance: setup.undone.chancePpm,
      fixed: setup.undone.lostCents,
      rate: setup.undone.lostRatePpm,
    },
    increments: facts.increment === undefined ? venue.increments : [{ fromCents: ZERO, stepCents: facts.increment }],
  };
  return ok(withHaircut(deal, setup.corrections?.win));
}

const NO_RETAIL: DealProblem = {
  reason: 'no-retail',
  message: 'There is no retail estimate. Enter one, or enter comparable cars.',
};

function retailOf(facts: LotFacts, appraisal: Appraisal): Appraisal['retail'] {
  if (appraisal.retail !== undefined) return appraisal.retail;
  return facts.retail && { ...facts.retail, mean: facts.retail.likely };
}

function titleOf(facts: LotFacts, context: PricingContext, problems: DealProblem[]): TitleBrand | undefined {
  if (facts.titleId === undefined) return undefined;
  const title = context.titleById.get(facts.titleId);
  if (title === undefined) {
    problems.push({
      reason: 'unknown-title',
      message: `The title “${facts.titleId}” is not in the setup. Choose one that is, or add it under Setup with its % of clean retail.`,
    });
  } else if (isUnconfirmed(title)) problems.push(unconfirmedTitle(title));
  return title;
}

function venueOf(facts: LotFacts, context: PricingContext, problems: DealProblem[]): Venue | undefined {
  const venue = context.venueOf(facts);
  if (venue !== undefined) return venue;
  const written = facts.venueName ?? facts.venueId;
  problems.push(
    written === undefined
      ? {
          reason: 'no-venue',
          message: 'There is no venue. Choose one: the fees, increments and transport come from it.',
        }
      : {
          reason: 'unknown-venue',
          message: `The venue “${written}” is not in the setup. Choose one that is, or add it under Setup with its fees and increments.`,
        },
  );
  return undefined;
}

/** The fee tables and charges that hold at the venue on the day of the sale. */
function billOf(
  facts: LotFacts,
  venue: Venue,
  context: PricingContext,
  problems: DealProblem[],
): { fees: readonly FeeTable[]; charges: readonly Charge[] } {
  const dates = datesOf(facts, venue);
  const fees: FeeTable[] = [];
  const charges: Charge[] = [];
  for (const id of venue.feeScheduleIds) {
    const schedule = context.scheduleById.get(id);
    if (schedule === undefined) {
      problems.push({
        reason: 'unknown-fees',
        message: `“${venue.name}” uses the fee schedule “${id}”, which is not in the setup. Add it, or remove it from the venue.`,
      });
      continue;
    }
    const editions = dates.map((date) => editionAt(schedule, date));
    const [edition] = editions;
    if (edition === undefined || !edition.ok) {
      if (edition !== undefined) problems.push({ reason: edition.reason, message: edition.message });
    } else if (editions.some((other) => !other.ok || other.value !== edition.value)) {
      problems.push({
        reason: 'needs-date',
        message: `The rates of “${schedule.name}” depend on which close is right. Pick the right one.`,
      });
    } else {
      fees.push(...edition.value.tables);
      charges.push(...edition.value.charges);
    }
  }
  const settled = problems.every(({ reason }) => !FEE_REASONS.has(reason));
  if (settled && isBillUnsaid(venue, { fees, charges })) problems.push(noFees(venue));
  return { fees, charges };
}

const FEE_REASONS: ReadonlySet<DealProblem['reason']> = new Set(['unknown-fees', 'no-edition', 'needs-date']);

/** The day of the sale at the venue; where the close is in doubt, every day that it can be. */
function datesOf({ close }: LotFacts, { zone }: Venue): readonly (LocalDate | undefined)[] {
  if (close === undefined) return [undefined];
  return [...new Set([close.instant, ...close.otherwise].map((moment) => dateIn(zone, moment)))];
}

/** Floored whenever there is a floor plan, the title can go on it, and the lot does not say cash. */
function fundingKind(facts: LotFacts, { setup }: PricingContext, title: TitleBrand | undefined): Funding['kind'] {
  const can = setup.carrying.floorPlan !== undefined && (title?.floorable ?? true);
  return can && facts.funding !== 'cash' ? 'floor' : 'cash';
}
