import { incompleteBeta } from '../../statistics/incomplete-beta.ts';
import type { Instant } from '../../time/instant.ts';
import { type Known, weighted } from './forgetting.ts';
import { type Learned, learned } from './learned.ts';

/** A purchase, and when it was known to be canceled, if it was. */
export interface Purchase extends Known {
  readonly canceledAt?: Instant;
  /** From when on it can't be canceled any more, as far as that can be told: until then it is in neither count. */
  readonly settledAt?: Instant;
}

/** What is believed before any purchase: one canceled in 31. An assumption of this tool. */
export const CANCELED_BELIEF = { canceled: 1, stood: 30 } as const;

/**
 * The share of purchases that are canceled: each adds one to either side of a Beta(1, 30).
 * @param setupRate what the setup counts with now
 */
export function canceledRate(
  purchases: readonly Purchase[],
  setupRate: number,
  now: Instant,
  halfLifeDays?: number,
): Learned {
  const isCanceled = ({ canceledAt }: Purchase) => canceledAt !== undefined && canceledAt <= now;
  const isSettled = (one: Purchase) => isCanceled(one) || (one.settledAt ?? one.at) <= now;
  const cases = weighted(purchases.filter(isSettled), now, halfLifeDays);
  const weightOf = (canceled: boolean) =>
    cases.reduce((sum, { one, weight }) => (isCanceled(one) === canceled ? sum + weight : sum), 0);
  const a = CANCELED_BELIEF.canceled + weightOf(true);
  const b = CANCELED_BELIEF.stood + weightOf(false);
  const prior = CANCELED_BELIEF.canceled + CANCELED_BELIEF.stood;
  return learned(
    a / (a + b),
    setupRate,
    (chance) => [betaQuantile((1 - chance) / 2, a, b), betaQuantile((1 + chance) / 2, a, b)],
    { cases: cases.length, weight: a + b - prior, priorShare: prior / (a + b) },
  );
}

/** The value below which a Beta(a, b) falls with chance `p`, by bisection. */
export function betaQuantile(p: number, a: number, b: number): number {
  let low = 0;
  let high = 1;
  for (;;) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) return middle;
    if (incompleteBeta(middle, a, b) < p) low = middle;
    else high = middle;
  }
}
