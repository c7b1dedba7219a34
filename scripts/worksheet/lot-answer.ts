import { listingContradictions } from '../../src/domain/appraisal/appraise.ts';
import { attempt } from '../../src/domain/attempt.ts';
import type { Line } from '../../src/domain/deal/price-breakdown.ts';
import { carName } from '../../src/domain/lot/car-name.ts';
import type { LotFacts } from '../../src/domain/lot/lot.ts';
import type { Cents } from '../../src/domain/money/cents.ts';
import { FACTOR_UNIT } from '../../src/domain/money/rate.ts';
import { ok } from '../../src/domain/outcome.ts';
import type { Instant } from '../../src/domain/time/instant.ts';
import type { PricingContext } from '../../src/domain/worksheet/pricing-context.ts';
import { walkOf } from '../../src/domain/worksheet/walk-of.ts';
import { orWhyNot, type Worksheet, worksheetOf } from '../../src/domain/worksheet/worksheet-of.ts';
import type { CellFault } from '../../src/intake/rows/row-reading.ts';
import type { LotRow } from './read-rows.ts';

/** Everything the command says about one row; also the object it writes as JSON. The keys are always all there. */
export type LotAnswer = ReturnType<typeof lotAnswer>;

/** Prices one row, or says why it can't be priced. */
export function lotAnswer({ row, facts, faults, barring }: LotRow, context: PricingContext, now: Instant) {
  const outcome = orWhyNot(facts, () => {
    const sheet = worksheetOf(facts, context);
    return sheet.ok ? ok(figuresOf(sheet.value, context)) : sheet;
  });
  const problems = [
    ...barring.map((fault) => ({ reason: 'no-lot', message: faultWords(fault) })),
    ...(outcome.ok ? [] : outcome.problems.map(({ reason, message }) => ({ reason, message }))),
  ];
  const figures = outcome.ok && barring.length === 0 ? outcome.value : NO_FIGURES;
  return {
    row,
    vin: facts.vin ?? null,
    car: carName(facts) || null,
    lotNumber: facts.lotNumber ?? null,
    venue: context.venueOf(facts)?.name ?? facts.venueName ?? null,
    closes: facts.close === undefined ? null : new Date(facts.close.instant).toISOString(),
    priceNow: facts.priceNow === undefined ? null : dollars(facts.priceNow),
    ...figures,
    problems,
    faults: [...faults.map(faultWords), ...contradictions(facts, context, now)],
  };
}

/** What of a row can't all be right, such as a year that its VIN does not have. */
function contradictions(facts: LotFacts, { setup }: PricingContext, now: Instant): readonly string[] {
  const found = attempt(() => listingContradictions(facts, setup, { now }));
  return found.ok ? found.value.map(({ message }) => message) : [];
}

/** "Title “Flooded”: …" */
export function faultWords({ heading, text, message }: CellFault): string {
  const cell = text === '' ? heading : `${heading} “${text}”`.trim();
  return cell === '' ? message : `${cell}: ${message}`;
}

function figuresOf(sheet: Worksheet, context: PricingContext) {
  const { deal, result, headroom, goOn, assumptions, appraisal } = sheet;
  const { breakdown } = result;
  const walk = walkOf(sheet);
  const { funding } = deal;
  return {
    maxBid: orNull(result.maxBid),
    limitedBy: result.limitedBy,
    headroom: orNull(headroom),
    goOn: orNull(goOn),
    expectedProfit: dollars(breakdown.profit),
    requiredProfit: dollars(breakdown.required),
    slack: dollars(breakdown.slack),
    allIn: dollars(breakdown.allIn),
    fees: dollars(breakdown.fees),
    cash: dollars(breakdown.cash),
    financed: dollars(breakdown.financed),
    funding: funding.kind,
    accepted: result.accepted.map(({ low, high }) => ({ low: dollars(low), high: dollars(high) })),
    cliffs: result.cliffs.map(({ edge, before, at, step, extraFee }) => ({
      edge: dollars(edge),
      before: dollars(before),
      at: dollars(at),
      step: dollars(step),
      extraFee: dollars(extraFee),
    })),
    holdFactors: {
      floorFactor: funding.floorFactor / FACTOR_UNIT,
      cashFactor: funding.cashFactor / FACTOR_UNIT,
      flatHold: dollars(funding.flatHold),
      expectedDays: (appraisal.hold ?? context.hold)(funding.kind).expectedDays,
    },
    lines: [lineOf(walk.from, 1), ...walk.steps.map((step) => lineOf(step, -1))],
    assumptions: assumptions.map(({ message }) => message),
    cautions: assumptions.flatMap(({ about, message }) => (LOUD.has(about) ? [message] : [])),
  };
}

/** What leaves a cost out: said with the problems, not only below the table. */
const LOUD: ReadonlySet<string> = new Set(['retail', 'transport']);

/** In place of the figures of a lot that can't be worked out. */
const NO_FIGURES = {
  maxBid: null,
  limitedBy: null,
  headroom: null,
  goOn: null,
  expectedProfit: null,
  requiredProfit: null,
  slack: null,
  allIn: null,
  fees: null,
  cash: null,
  financed: null,
  funding: null,
  accepted: [],
  cliffs: [],
  holdFactors: null,
  lines: [],
  assumptions: [],
  cautions: [],
} as const satisfies Record<keyof ReturnType<typeof figuresOf>, null | readonly never[]>;

/** @param sign what is taken off counts against the sum, so that the amounts add up to the price */
function lineOf({ key, label, cents, range }: Line, sign: 1 | -1) {
  return {
    key,
    label,
    amount: dollars((cents * sign) as Cents),
    low: range === undefined ? null : dollars(range.low),
    high: range === undefined ? null : dollars(range.high),
  };
}

/** Exact to the cent: a whole number of cents divided by 100 prints with at most two decimals. Adding 0 turns -0 into 0. */
const dollars = (amount: Cents): number => (amount + 0) / 100;
const orNull = (amount: Cents | null): number | null => (amount === null ? null : dollars(amount));
