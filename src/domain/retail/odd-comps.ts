import { type Cents, roundedCents } from '../money/cents.ts';
import type { Estimate } from '../money/estimate.ts';
import { tCdf } from '../statistics/student-t.ts';
import { counts } from './adjusted-comp.ts';
import type { Estimation } from './estimation.ts';
import { posteriorOf, type RetailFromComps } from './retail-from-comps.ts';

/** A comparable that the others would hardly have led one to expect. */
export interface OddComp {
  /** Its place in the list. */
  readonly index: number;
  /** Chance that a comparable lies so far from what the guess and the others say. */
  readonly chance: number;
  readonly side: 'above' | 'below';
  /** What retail would be without it. */
  readonly withoutIt: Cents;
}

/** Rarer than this, a comparable is pointed out. It is never dropped by itself: the buyer decides. */
const ODD = 0.01;

/** Comparables that deserve a second look: a typing error, another trim, a wreck. */
export function oddComps(
  retail: RetailFromComps,
  guess: Estimate | undefined,
  settings: Estimation,
): readonly OddComp[] {
  const counted = retail.comps.filter(counts);
  return retail.comps.flatMap((one, index) => {
    if (!counts(one)) return [];
    const others = posteriorOf(
      guess,
      counted.filter((other) => other !== one),
      settings,
    );
    if (others === undefined) return [];
    const t = (one.log - others.mean) / others.scale;
    const chance = 2 * tCdf(-Math.abs(t), others.freedom);
    if (chance >= ODD) return [];
    const withoutIt = roundedCents(Math.exp(others.mean));
    return [{ index, chance, side: t > 0 ? ('above' as const) : ('below' as const), withoutIt }];
  });
}
