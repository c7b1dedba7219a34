import type { Instant } from '../../time/instant.ts';
import { DAY } from '../../time/units.ts';

/** One thing that happened. */
export interface Known {
  /** When the last word on it was written down: before that it counts for nothing. */
  readonly at: Instant;
  /** When it happened, from which it ages; when it was written down, where that is left out. */
  readonly on?: Instant;
}

/** After so many days a case counts for half, unless the dealer says otherwise. */
export const HALF_LIFE_DAYS = 180;

/**
 * What a case counts for at a later moment: half after each half-life (a power prior; Ibrahim & Chen 2000). One that was
 * not known yet counts for nothing, so that a look back at an earlier moment can't see what came later.
 * @param halfLifeDays above 0
 */
export function weightAt(now: Instant, halfLifeDays: number = HALF_LIFE_DAYS): (known: Known) => number {
  return ({ at, on = at }) => (at > now ? 0 : 2 ** (-Math.max(0, now - on) / (halfLifeDays * DAY)));
}

/** A case with what it counts for. */
export interface Weighted<Case> {
  readonly one: Case;
  readonly weight: number;
}

/** The cases that were known, each with its weight. */
export function weighted<Case extends Known>(
  cases: readonly Case[],
  now: Instant,
  halfLifeDays?: number,
): readonly Weighted<Case>[] {
  const weightOf = weightAt(now, halfLifeDays);
  return cases.flatMap((one) => {
    const weight = weightOf(one);
    return weight > 0 ? [{ one, weight }] : [];
  });
}
