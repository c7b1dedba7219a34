import { appraiseMoney, type MoneyAppraisal } from '../appraisal/appraise.ts';
import { attempt } from '../attempt.ts';
import { CORRECTION_LABELS, type CorrectionId, onlySome, switchedOnIn } from '../correction/corrections.ts';
import type { Deal } from '../deal/deal.ts';
import { breakdownAt, type Line, type PriceBreakdown } from '../deal/price-breakdown.ts';
import type { LotFacts } from '../lot/lot.ts';
import { type Cents, cents } from '../money/cents.ts';
import { dealOf } from './deal-of.ts';
import { type PricingContext, pricingContext } from './pricing-context.ts';

/** A worksheet as it would be without corrections, and what each of them takes off then. */
export interface Uncorrected {
  readonly deal: Deal;
  readonly appraisal: MoneyAppraisal;
  /** At the price that the corrections lead to. */
  readonly breakdown: PriceBreakdown;
  /** Taken off one after the other; together they are the whole difference. */
  readonly steps: readonly Line[];
}

/**
 * What each correction that is on takes off at a price: the deal is worked out without any, then with the first, with the
 * first two and so on, and what is left at that price is compared. So the steps close to the cent whatever a correction
 * touches, interest and allowances included.
 * @returns undefined while none is on, or where the lot has no deal without them
 */
export function uncorrectedAt(facts: LotFacts, context: PricingContext, price: Cents): Uncorrected | undefined {
  const { given } = context;
  const on = switchedOnIn(given.corrections);
  if (given.corrections === undefined || on.length === 0) return undefined;
  const all = given.corrections;
  const stages = on.map((_, count) => on.slice(0, count));
  const worked = attempt(() =>
    [...stages.map((ids) => pricingContext({ ...given, corrections: onlySome(all, ids) })), context].map((stage) =>
      stageOf(facts, stage, price),
    ),
  );
  if (!worked.ok) return undefined;
  const [first] = worked.value;
  const lefts = worked.value.map((stage) => stage?.breakdown.slack);
  if (first === undefined || lefts.includes(undefined)) return undefined;
  return {
    ...first,
    steps: on.map((id, i) => stepOf(id, cents((lefts[i] ?? 0) - (lefts[i + 1] ?? 0)))),
  };
}

const stepOf = (id: CorrectionId, amount: Cents): Line => ({
  key: `correction-${id}`,
  group: 'haircut-cost',
  label: CORRECTION_LABELS[id],
  cents: amount,
});

function stageOf(facts: LotFacts, context: PricingContext, price: Cents) {
  const { setup, history, spreadOf } = context;
  const appraisal = appraiseMoney(facts, setup, history, spreadOf);
  const deal = dealOf(facts, context, appraisal);
  return deal.ok ? { deal: deal.value, appraisal, breakdown: breakdownAt(deal.value, price) } : undefined;
}
