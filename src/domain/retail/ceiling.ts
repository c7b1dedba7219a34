import * as z from 'zod/mini';
import { type Cents, cents, centsSchema, positiveCentsSchema, roundedCents, ZERO } from '../money/cents.ts';
import { ppm, sharePpmSchema } from '../money/rate.ts';
import { rateOf } from '../money/rounding.ts';
import { type Lognormal, meanBelowCap } from '../statistics/lognormal.ts';

/**
 * What the customer could buy instead: a new one after its rebate, a plainer version, one that stands in stock. Nobody
 * pays more for this lot than that costs him.
 */
export const ceilingSchema = z.strictObject({
  kind: z.enum(['new', 'plainer', 'in-stock', 'other']),
  label: z.string().check(z.minLength(1), z.maxLength(80)),
  /** Its list or asking price. */
  list: positiveCentsSchema.check(z.gte(1)),
  markup: z._default(
    sharePpmSchema.check(z.describe('the usual discount off that price, ppm (100000 is 10%)')),
    ppm(0),
  ),
  rebate: z._default(positiveCentsSchema, ZERO),
  cheaperBy: z._default(
    centsSchema.check(z.describe('how much cheaper this lot must be to sell instead; negative if it can cost more')),
    ZERO,
  ),
  /** Cars of this kind on the dealer's own lot: each makes the next one stand longer. */
  inStock: z._default(z.int().check(z.gte(0), z.lte(99)), 0),
});
export type Ceiling = z.infer<typeof ceilingSchema>;

export const ceilingsSchema = z.array(ceilingSchema).check(z.maxLength(20));

/** One amount on the way from the substitute's price to the ceiling. */
export interface CeilingStep {
  readonly label: string;
  /** What it takes off; negative where it adds. */
  readonly cents: Cents;
}

export interface AppliedCeiling {
  readonly ceiling: Ceiling;
  /** The price of the substitute less all steps is the cap. */
  readonly steps: readonly CeilingStep[];
  /** The most that this lot can retail for because of it. */
  readonly cap: Cents;
  /** Whether it is the lowest of them, and so the one that counts. */
  readonly lowest: boolean;
}

/** Works each ceiling out, and marks the lowest; of two equal ones the first. */
export function applyCeilings(ceilings: readonly Ceiling[]): readonly AppliedCeiling[] {
  const worked = ceilings.map((ceiling) => {
    const steps = stepsOf(ceiling);
    return {
      ceiling,
      steps,
      cap: cents(
        Math.max(
          0,
          steps.reduce((left, step) => left - step.cents, +ceiling.list),
        ),
      ),
    };
  });
  const lowest = worked.reduce((best, one) => Math.min(best, one.cap), Number.POSITIVE_INFINITY);
  const first = worked.findIndex((one) => one.cap === lowest);
  return worked.map((one, index) => ({ ...one, lowest: index === first }));
}

function stepsOf({ list, markup, rebate, cheaperBy }: Ceiling): readonly CeilingStep[] {
  return [
    { label: 'Usual discount off list', cents: rateOf(list, markup) },
    { label: 'Rebate', cents: rebate },
    { label: cheaperBy < 0 ? 'Worth more than it' : 'Must be cheaper by', cents: cheaperBy },
  ].filter((step) => step.cents !== 0);
}

/**
 * Mean retail under a ceiling: E[min(R, cap)], not the smaller of mean and cap. A car that might have brought more than
 * the substitute brings the substitute's price, while one that brings less still does; taking only the smaller of the
 * two would keep upside that no customer pays, and would be too high by some 3% where mean and cap meet.
 */
export function cappedMean(retail: Lognormal, cap: Cents): Cents {
  return roundedCents(meanBelowCap(retail, cap));
}
