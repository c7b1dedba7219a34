import type { Claim, ClaimAbout } from '../lot/claim.ts';
import { type Cents, cents, ZERO } from '../money/cents.ts';
import { formatMoney } from '../money/format-money.ts';
import { PPM } from '../money/rate.ts';
import { rateOf } from '../money/rounding.ts';
import type { Doubt } from '../retail/estimation.ts';
import { chanceFalse } from './doubt-lines.ts';

/** What looking into one claim is worth before the lot closes. */
export interface Check {
  /** The claim's place in the list. */
  readonly index: number;
  readonly claim: Claim;
  /** What to look at: "a photo of the pedals". */
  readonly what: string;
  /** Expected doubt that goes away if the claim turns out true: by so much the car can be worth more to you. */
  readonly ifTrue: Cents;
  /** By so much less it is worth if the claim turns out false, against what is counted now. */
  readonly ifFalse: Cents;
  /** What knowing is worth at the price in question; see {@link worthOfKnowing}. */
  readonly worth: Cents;
  /** "A photo of the pedals is worth up to $640." */
  readonly sentence: string;
}

/**
 * The checks that are worth making, the most valuable first; of two equal ones the one that takes less effort.
 * @param surplus expected profit beyond what is required at the price in question, doubt included as it stands; 0,
 *   which is the max bid itself, is where knowing is worth most
 */
export function nextChecks(claims: readonly Claim[], doubt: Doubt, surplus: Cents = ZERO): readonly Check[] {
  return claims
    .map((claim, index): Check => {
      const chance = chanceFalse(claim, doubt);
      const ifTrue = rateOf(claim.worthIfFalse, chance);
      const { what } = LOOK_AT[claim.about];
      const worth = worthOfKnowing(claim.worthIfFalse, chance / PPM, surplus);
      const upTo = surplus === 0 ? 'up to ' : '';
      const sentence = `${what.charAt(0).toUpperCase()}${what.slice(1)} is worth ${upTo}${formatMoney(worth, { cents: 'never' })}.`;
      return { index, claim, what, ifTrue, ifFalse: cents(claim.worthIfFalse - ifTrue), worth, sentence };
    })
    .filter((check) => check.worth > 0)
    .sort((a, b) => b.worth - a.worth || LOOK_AT[a.claim.about].effort - LOOK_AT[b.claim.about].effort);
}

/**
 * Expected value of perfect information about one claim for somebody who buys exactly when it pays. With chance q that
 * it is false and stake L, the surplus s is s + qL if true and s − (1−q)L if false; knowing is worth
 *
 *     (1−q)·(s + qL)⁺ + q·(s − (1−q)L)⁺ − s⁺
 *
 * which is largest, q(1−q)L, at s = 0, and nothing where neither answer would change what he does. (Howard 1966,
 * information value theory.) A real look at a photo tells a little less than everything, so this is a limit.
 * @param stake what the car is worth less if the claim is false, cents
 * @param q chance that it is false, 0 to 1
 */
export function worthOfKnowing(stake: Cents, q: number, surplus: Cents): Cents {
  const ifTrue = Math.max(0, surplus + q * stake);
  const ifFalse = Math.max(0, surplus - (1 - q) * stake);
  return cents(Math.round(Math.max(0, (1 - q) * ifTrue + q * ifFalse - Math.max(0, surplus))));
}

/** What settles a claim, and how much trouble that is: a photo to look for, a paper to ask for, a call to make. */
const LOOK_AT: Readonly<Record<ClaimAbout, { readonly what: string; readonly effort: number }>> = {
  transmission: { what: 'a photo of the pedals', effort: 1 },
  drive: { what: 'a photo of the drive selector or the front axle', effort: 1 },
  trim: { what: 'a photo of the window sticker or the badge', effort: 1 },
  packages: { what: 'a photo of the option label', effort: 1 },
  mileage: { what: 'a photo of the lit odometer', effort: 1 },
  title: { what: 'a copy of the title, front and back', effort: 2 },
  'one-owner': { what: 'a history report', effort: 2 },
  other: { what: 'a call to the seller', effort: 3 },
};
