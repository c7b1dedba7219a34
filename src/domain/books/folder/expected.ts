import type { CostKind } from '../../accounts/cost-kind.ts';
import { appraiseMoney } from '../../appraisal/appraise.ts';
import { breakdownAt } from '../../deal/price-breakdown.ts';
import type { LotFacts } from '../../lot/lot.ts';
import { type Cents, cents, sumCents } from '../../money/cents.ts';
import { formatMoney } from '../../money/format-money.ts';
import { dateIn } from '../../time/wall-clock.ts';
import { costLines } from '../../worksheet/cost-lines.ts';
import { dealOf } from '../../worksheet/deal-of.ts';
import type { PricingContext } from '../../worksheet/pricing-context.ts';
import { orWhyNot } from '../../worksheet/worksheet-of.ts';
import { feeSources } from './fee-source.ts';

/** What a bill was expected to say, as of the win. */
export interface ExpectedLine {
  /** The same for every folder of a kind, so that a booked line can name what it answers. */
  readonly key: string;
  readonly cost: CostKind;
  readonly label: string;
  readonly cents: Cents;
  /** One in ten below, one in ten above. */
  readonly range?: { readonly low: Cents; readonly high: Cents } | undefined;
  /** Where the figure comes from, for a sentence. */
  readonly from: string;
}

/** A purchase as it was believed to go when the lot was won. */
export interface ExpectedPurchase {
  readonly lines: readonly ExpectedLine[];
  /** Expected retail, after the title discount; null if there was no estimate. */
  readonly retail: Cents | null;
  /** Retail less every line that a bill comes for: what the actual gross is measured against. */
  readonly gross: Cents | null;
  /** What the lender was to advance. */
  readonly financed: Cents | null;
  /** What could not be worked out, in sentences. */
  readonly problems: readonly string[];
}

/** Nothing to hold a purchase against, because of `problem`. */
export const nothingExpected = (problem: string): ExpectedPurchase => ({
  lines: [],
  retail: null,
  gross: null,
  financed: null,
  problems: [problem],
});

/**
 * The expected side of a folder: the worksheet at the hammer price that was paid.
 * @param facts what was known of the lot when it was won
 * @param context the setup in force then
 */
export function expectedPurchase(facts: LotFacts, context: PricingContext, hammer: Cents): ExpectedPurchase {
  const venue = context.venueOf(facts);
  const problems: string[] = [];
  const lines: ExpectedLine[] = [
    { key: 'hammer', cost: 'hammer', label: 'Hammer price', cents: hammer, from: 'From the result' },
  ];
  if (venue === undefined) problems.push('The venue is not in Setup, so no fees and no transport are expected.');
  else {
    const date = facts.close && dateIn(venue.zone, facts.close.instant);
    const schedules = venue.feeScheduleIds.flatMap((id) => context.scheduleById.get(id) ?? []);
    const fees = feeSources(schedules, date, hammer);
    problems.push(...fees.problems);
    fees.sources.forEach(({ label, cents: amount, line }, i) => {
      lines.push({ key: `fee-${i}`, cost: 'fee', label, cents: amount, from: line });
    });
    let number = 0;
    for (const line of costLines(facts, context.setup, venue.transport)) {
      if (line.kind !== 'recon' && line.kind !== 'transport') continue;
      const key = line.kind === 'recon' ? `recon-${number++}` : 'transport';
      const from = line.kind === 'recon' ? 'The worksheet' : line.label;
      const label = line.kind === 'transport' ? 'Transport' : line.label.replace(/^Recon: /, '');
      lines.push({ key, cost: line.kind, label, cents: line.cents, range: line.range, from });
    }
  }
  const { setup } = context;
  const deal = orWhyNot(facts, () =>
    dealOf(facts, context, appraiseMoney(facts, setup, context.history, context.spreadOf)),
  );
  if (!deal.ok) {
    problems.push(...deal.problems.filter(({ reason }) => UNEXPECTED.has(reason)).map(({ message }) => message));
    return { lines: withoutNothing(lines), retail: null, gross: null, financed: null, problems };
  }
  const { retail: whole, steps, financed } = breakdownAt(deal.value, hammer);
  const interest = steps.find(({ group }) => group === 'interest');
  if (interest !== undefined)
    lines.push({ ...HELD, key: 'interest', cost: 'interest', label: interest.label, cents: interest.cents });
  const unitFee = deal.value.funding.kind === 'floor' ? setup.carrying.floorPlan?.unitFeeCents : undefined;
  if (unitFee !== undefined)
    lines.push({
      key: 'floor-fee',
      cost: 'floor-fee',
      label: 'Lender’s fee for the car',
      cents: unitFee,
      from: 'The setup',
    });
  const title = steps.find(({ group }) => group === 'title');
  const retail = cents(whole.cents - (title?.cents ?? 0));
  const kept = withoutNothing(lines);
  const gross = cents(retail - sumCents(kept.map((line) => line.cents)));
  return { lines: kept, retail, gross, financed, problems };
}

/** What of a deal's problems the fees and costs above do not say already. */
const UNEXPECTED: ReadonlySet<string> = new Set(['no-retail', 'not-meant', 'cant-work-out']);

const HELD = { from: 'The worksheet, over the expected days to sell' };

const withoutNothing = (lines: readonly ExpectedLine[]): ExpectedLine[] => lines.filter((line) => line.cents !== 0);

/** "$420 to $900". */
export const rangeInWords = ({ low, high }: NonNullable<ExpectedLine['range']>): string =>
  `${formatMoney(low, { cents: 'never' })} to ${formatMoney(high, { cents: 'never' })}`;
