/** What a closing still needs, the greatest need first:
 * - `danger`: it closes in the busy hours, no proxy is placed, and it is on the user's own hands;
 * - `unsaid`: it has closed and nobody said how it ended;
 * - `bare`: no proxy is placed yet, but there is time to watch it, or somebody else does;
 * - `past-stop`: the price has gone past the price at which to stop, so there is nothing to place;
 * - `placed`: its proxy is placed;
 * - `over`: how it ended is known.
 */
export const NEEDS = ['danger', 'unsaid', 'bare', 'past-stop', 'placed', 'over'] as const;
export type Need = (typeof NEEDS)[number];

export interface ClosingFacts {
  readonly ended: boolean;
  readonly closed: boolean;
  readonly placed: boolean;
  /** The price is past the stop, or no price pays. */
  readonly pastStop: boolean;
  readonly inRush: boolean;
  /** It was handed over, or the user is done with it. */
  readonly offHands: boolean;
}

export function needOf({ ended, closed, placed, pastStop, inRush, offHands }: ClosingFacts): Need {
  if (ended) return 'over';
  if (closed) return 'unsaid';
  if (placed) return 'placed';
  if (pastStop) return 'past-stop';
  return inRush && !offHands ? 'danger' : 'bare';
}

/** The greatest need among several; `over` for none. */
export function greatestNeed(needs: Iterable<Need>): Need {
  const there = new Set(needs);
  return NEEDS.find((need) => there.has(need)) ?? 'over';
}
