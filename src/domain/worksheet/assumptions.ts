import type { LotFacts } from '../lot/lot.ts';
import { formatMoney } from '../money/format-money.ts';
import type { AdjustedComp } from '../retail/adjusted-comp.ts';
import type { PricingContext } from './pricing-context.ts';

/** Something that was taken for granted because the lot does not say, in a sentence. */
export interface Assumption {
  readonly about: 'title' | 'retail' | 'recon' | 'transport' | 'funding' | 'close' | 'comps';
  readonly message: string;
}

/**
 * What the max bid of a lot rests on without anybody having said so.
 * @param comps its comparables, as they were adjusted
 */
export function assumptionsOf(
  facts: LotFacts,
  context: PricingContext,
  comps: readonly AdjustedComp[] = [],
): readonly Assumption[] {
  const { setup } = context;
  const found: Assumption[] = comps.flatMap(({ tooFar }, i) =>
    tooFar === undefined ? [] : [{ about: 'comps' as const, message: `Comparable ${i + 1}: ${tooFar}` }],
  );
  for (const message of farEnds(facts)) found.push({ about: 'retail', message });
  if (facts.titleId === undefined) found.push({ about: 'title', message: 'No title is set: assumed clean.' });
  if ((facts.recon ?? []).length === 0) {
    found.push(
      setup.costs.reconCents > 0
        ? { about: 'recon', message: 'No recon lines: your standard amount is used.' }
        : { about: 'recon', message: 'No recon is counted.' },
    );
  }
  const venue = context.venueOf(facts);
  if (facts.transport === 0) {
    found.push({ about: 'transport', message: 'Transport is quoted at $0: delivery is counted as free.' });
  }
  if (facts.funding === 'floor') {
    const title = facts.titleId === undefined ? undefined : context.titleById.get(facts.titleId);
    if (setup.carrying.floorPlan === undefined) {
      found.push({
        about: 'funding',
        message: 'There is no floor plan in the setup: counted as paid from cash.',
      });
    } else if (title?.floorable === false) {
      found.push({ about: 'funding', message: `“${title.name}” can’t go on the floor plan. It takes cash.` });
    }
  }
  if (facts.close === undefined && (venue?.feeScheduleIds.length ?? 0) > 0) {
    found.push({ about: 'close', message: 'No closing time is set: the only rates known for the venue are used.' });
  }
  return found;
}

/** An end of retail so far from the likely figure has more often lost or gained a digit than been meant. */
const FAR = 2.5;

function farEnds({ retail }: LotFacts): readonly string[] {
  if (retail === undefined) return [];
  const { low = retail.likely, likely, high = likely } = retail;
  return [
    ...(low * FAR < likely
      ? [`The low end of retail, ${formatMoney(low)}, is far below ${formatMoney(likely)}: check its digits.`]
      : []),
    ...(high > likely * FAR
      ? [`The high end of retail, ${formatMoney(high)}, is far above ${formatMoney(likely)}: check its digits.`]
      : []),
  ];
}
