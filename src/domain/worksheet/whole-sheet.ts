import { type AppraisalContext, appraise, type LotAppraisal, listingContradictions } from '../appraisal/appraise.ts';
import { attempt } from '../attempt.ts';
import type { LotFacts } from '../lot/lot.ts';
import { notMeant } from '../lot/not-meant.ts';
import type { Outcome } from '../outcome.ts';
import { type Risk, riskAt } from '../risk/risk-at.ts';
import type { DealRefusal } from './deal-of.ts';
import type { PricingContext } from './pricing-context.ts';
import { orWhyNot, type Worksheet, worksheetOf } from './worksheet-of.ts';

/** A lot's worksheet with what the screen draws beside it. */
export interface WholeSheet {
  readonly appraisal: LotAppraisal;
  readonly outcome: Outcome<Worksheet, DealRefusal>;
  /** Of buying at the max bid; absent where there is none. */
  readonly risk?: Risk;
}

/** All of it, worked out so that what goes wrong in one part costs only that part. */
export function wholeSheet(facts: LotFacts, context: PricingContext, about: AppraisalContext): WholeSheet {
  const { setup } = context;
  // A guess that nobody can have meant is not drawn as if it were one.
  const appraised = attempt(() => appraise(isMeant(facts) ? facts : { ...facts, retail: undefined }, setup, about));
  if (!appraised.ok) {
    const contradictions = attempt(() => listingContradictions(facts, setup, about));
    return {
      appraisal: { ...NOTHING_BELIEVED, contradictions: contradictions.ok ? contradictions.value : [] },
      outcome: orWhyNot(facts, () => {
        throw appraised.cause;
      }),
    };
  }
  const appraisal = appraised.value;
  const outcome = worksheetOf(facts, context, appraisal);
  if (!outcome.ok) return { appraisal, outcome };
  const { deal, result } = outcome.value;
  const { maxBid } = result;
  if (appraisal.risk === undefined || maxBid === null) return { appraisal, outcome };
  const inputs = appraisal.risk;
  const risk = attempt(() => riskAt(deal, maxBid, inputs));
  return { appraisal, outcome, ...(risk.ok && { risk: risk.value }) };
}

const isMeant = (facts: LotFacts): boolean => notMeant(facts).every(({ field }) => field !== 'retail');

const NOTHING_BELIEVED: LotAppraisal = { costs: [], stretch: 1, checks: [], contradictions: [] };
