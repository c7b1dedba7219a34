import type { Instant } from '../time/instant.ts';
import type { Purse } from './purse.ts';

/** From `at` on, so much of the purse's own cash may be promised in all. */
export interface CashStep {
  readonly at: Instant;
  /** Whole cents; never less than the step before. */
  readonly cents: number;
}

/**
 * How much own cash may be promised by when, so that no payment that is due later finds the purse empty: at each moment
 * the least that the balance, with nothing bought, comes to from then on. It can only rise with time; the first step is what
 * may be promised now, and is below 0 where even buying nothing leaves a payment uncovered.
 */
export function cashPath({ cash, flows }: Purse, now: Instant): readonly CashStep[] {
  const later = flows.filter(({ at }) => at > now).sort((a, b) => a.at - b.at);
  const already = flows.reduce((sum: number, flow) => (flow.at <= now ? sum + flow.cents : sum), cash);
  let balance = already;
  const balances = [{ at: now, cents: balance }];
  for (const { at, cents } of later) {
    balance += cents;
    const last = balances.at(-1);
    // What comes in and what is due at one moment meet.
    if (last?.at === at) balances[balances.length - 1] = { at, cents: balance };
    else balances.push({ at, cents: balance });
  }
  let least = Number.POSITIVE_INFINITY;
  const path: CashStep[] = [];
  for (const { at, cents } of balances.reverse()) {
    least = Math.min(least, cents);
    path.push({ at, cents: least });
  }
  return path.reverse().filter((step, i, all) => i === 0 || step.cents > (all[i - 1]?.cents ?? 0));
}

/** What a path lets one promise at a moment; whole cents. */
export function cashBy(path: readonly CashStep[], at: number): number {
  return path.filter((step, i) => i === 0 || step.at <= at).at(-1)?.cents ?? 0;
}
