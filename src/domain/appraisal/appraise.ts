import type { StockCar } from '../carrying/days-to-sell.ts';
import { holdFactors } from '../carrying/hold-factors.ts';
import { type HoldSpreads, holdSpreads } from '../carrying/hold-spreads.ts';
import { stockOf } from '../carrying/stock-record.ts';
import { claimedMiles } from '../claims/claimed-miles.ts';
import { type Contradiction, contradictionsOf, type Sighting } from '../claims/contradictions.ts';
import { chanceFalse, doubtLines } from '../claims/doubt-lines.ts';
import { type Check, nextChecks } from '../claims/next-check.ts';
import { correctedRecon } from '../correction/corrected-recon.ts';
import type { Appraisal } from '../deal/beliefs.ts';
import type { CostLine, Deal } from '../deal/deal.ts';
import type { LotFacts } from '../lot/lot.ts';
import { PPM } from '../money/rate.ts';
import type { Accepts } from '../price/accepted-intervals.ts';
import { DEFAULT_ESTIMATION, type Doubt } from '../retail/estimation.ts';
import type { UncertainCost } from '../risk/cost-grid.ts';
import { lossChanceCap, type RiskInputs } from '../risk/risk-at.ts';
import type { Setup } from '../setup/setup.ts';
import type { Instant } from '../time/instant.ts';
import { type AppraisedRetail, appraisedRetail } from './appraised-retail.ts';

/** What an appraisal needs beyond the lot and the setup. */
export interface AppraisalContext {
  readonly now: Instant;
  /** The dealer's own cars, from which days to sell are learned; the same that the pricing context was given. */
  readonly history?: readonly StockCar[];
  /** What earlier sales or other sources said about the same car. */
  readonly earlier?: readonly Sighting[];
}

/** What is believed about a lot as far as its price goes. `dealOf` takes it as it is. */
export interface MoneyAppraisal extends Appraisal {
  readonly retail?: AppraisedRetail;
  /** Expected cost of each doubt about the listing. */
  readonly costs: readonly CostLine[];
  /** How much longer than usual it will stand, because cars like it are in stock: 1 is as usual. */
  readonly stretch: number;
  /** What the chance of a loss rests on; absent while there is no retail. */
  readonly risk?: RiskInputs;
}

/** What is believed about a lot, and what explains it. */
export interface LotAppraisal extends MoneyAppraisal {
  /** What looking into each doubt would be worth at the max bid, the most valuable first. */
  readonly checks: readonly Check[];
  readonly contradictions: readonly Contradiction[];
}

/** Retail, doubt, holding time and risk of one lot, from what is known of it. */
export function appraise(facts: LotFacts, setup: Setup, context: AppraisalContext): LotAppraisal {
  const { doubt } = setup.estimation ?? DEFAULT_ESTIMATION;
  return {
    ...appraiseMoney(facts, setup, context.history),
    checks: nextChecks(facts.claims ?? [], doubt),
    contradictions: listingContradictions(facts, setup, context),
  };
}

/** The part of an appraisal that the max bid rests on; the same whatever the date, and quick enough for long lists. */
export function appraiseMoney(
  facts: LotFacts,
  setup: Setup,
  history: readonly StockCar[] = stockOf(setup),
  spreadOf: HoldSpreads = holdSpreads(setup.carrying, history),
): MoneyAppraisal {
  const settings = setup.estimation ?? DEFAULT_ESTIMATION;
  const { carrying, corrections } = setup;
  const retail = appraisedRetail(facts, settings, carrying.horizonDays, corrections);
  const twins = (facts.ceilings ?? []).reduce((sum, ceiling) => sum + ceiling.inStock, 0);
  const stretch = 1 + (twins * settings.twinStretchPpm) / PPM;
  return {
    ...(retail && {
      retail,
      risk: riskInputs(correctedRecon(facts, corrections), retail, settings.doubt, (funding) =>
        spreadOf(funding, stretch),
      ),
    }),
    ...(stretch > 1 && { hold: (funding) => holdFactors(carrying, { history, funding, stretch }) }),
    costs: doubtLines(facts.claims ?? [], settings.doubt),
    stretch,
  };
}

/**
 * The dealer's cap on the chance of a loss, in the form that a worksheet takes: made anew for each deal, what-ifs
 * included.
 */
export function riskCapOf(
  { risk }: Pick<LotAppraisal, 'risk'>,
  { rules }: Pick<Setup, 'rules'>,
): (deal: Deal) => Accepts | undefined {
  return (deal) => risk && lossChanceCap(deal, risk, rules.lossChancePpm);
}

function riskInputs(facts: LotFacts, retail: AppraisedRetail, doubt: Doubt, hold: RiskInputs['hold']): RiskInputs {
  return {
    retail: { mean: retail.uncapped, sigma: retail.sigma, cap: retail.cap },
    costs: uncertainCosts(facts, doubt),
    hold,
  };
}

/** Recon lines, and doubts that may or may not come true. What is certain needs no spread. */
function uncertainCosts({ recon = [], claims = [] }: LotFacts, doubt: Doubt): readonly UncertainCost[] {
  return [
    ...recon.map(({ amount: { low, likely, high }, chance }) => ({
      low: low ?? likely,
      likely,
      high: high ?? likely,
      chance: chance / PPM,
    })),
    ...claims.map((claim) => {
      const amount = claim.worthIfFalse;
      return { low: amount, likely: amount, high: amount, chance: chanceFalse(claim, doubt) / PPM, doubt: true };
    }),
  ].filter(({ low, high, chance }) => chance > 0 && (low < high || (chance < 1 && high > 0)));
}

/** What of a listing cannot all be right: against its VIN, itself and other sources for the same car. */
export function listingContradictions(
  facts: LotFacts,
  { titles }: Setup,
  { now, earlier = [] }: AppraisalContext,
): readonly Contradiction[] {
  const named = (sighting: Sighting): Sighting => {
    const title = titles.find(({ id }) => id === sighting.facts.titleId);
    return title ? { ...sighting, facts: { ...sighting.facts, titleId: title.name } } : sighting;
  };
  const others = [...claimedMiles(facts.claims ?? []), ...earlier.map(named)];
  return contradictionsOf(named({ source: 'this listing', at: now, facts }), others, new Date(now).getUTCFullYear());
}
