import type { LotFacts } from '../../../src/domain/lot/lot.ts';
import { cents } from '../../../src/domain/money/cents.ts';
import type { Setup } from '../../../src/domain/setup/setup.ts';
import { instant } from '../../../src/domain/time/instant.ts';
import { MINUTE } from '../../../src/domain/time/units.ts';
import { zone } from '../../../src/domain/time/zone.ts';
import { pricingContext } from '../../../src/domain/worksheet/pricing-context.ts';
import { standingOf } from '../../../src/domain/worksheet/worksheet-of.ts';

/** What became of a lot some time ago: a proxy that was placed, or a fact that was read. */
export interface Later {
  readonly minutesAgo: number;
  readonly proxy?: number;
  readonly set?: LotFacts;
}

/** A lot of a counted day. */
export interface DayLot {
  readonly facts: LotFacts;
  readonly addedMinutesAgo: number;
  readonly then?: readonly Later[];
}

export const dollars = (amount: number) => cents(amount * 100);

/** A close some minutes from now; below zero, it has passed. */
export function closeIn(minutes: number, now: number): NonNullable<LotFacts['close']> {
  return {
    instant: instant(Math.floor(now / MINUTE) * MINUTE + minutes * MINUTE),
    text: 'as the sale says it',
    zone: zone('America/Boise'),
    how: 'stated-zone',
    doubts: [],
    otherwise: [],
  };
}

/** The smallest whole-dollar retail at which the max bid of a car is `maxBid` dollars. @throws Error when there is none */
export function retailFor(maxBid: number, facts: LotFacts, setup: Setup): NonNullable<LotFacts['retail']> {
  const context = pricingContext(setup);
  const maxAt = (retail: number) => {
    const standing = standingOf({ ...facts, retail: { likely: dollars(retail) } }, context);
    if (!standing.ok) throw new Error(standing.problems.map(({ message }) => message).join(' '));
    return standing.value.maxBid ?? 0;
  };
  let [low, high] = [0, 200_000];
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (maxAt(middle) >= dollars(maxBid)) high = middle;
    else low = middle;
  }
  if (maxAt(high) !== dollars(maxBid))
    throw new Error(`no retail gives a max bid of $${maxBid}: $${maxAt(high) / 100}`);
  return { likely: dollars(high) };
}
