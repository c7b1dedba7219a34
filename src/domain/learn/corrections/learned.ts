/** What the evidence says of one figure, with how sure that is. */
export interface Learned {
  /** The present value, in the figure's own unit. */
  readonly value: number;
  /** The truth lies between these in 19 of 20 such cases. */
  readonly low: number;
  readonly high: number;
  /** True when even a range that holds the truth in 199 of 200 cases leaves out "no correction". */
  readonly clear: boolean;
  /** How many cases there are. */
  readonly cases: number;
  /** What they count for after forgetting: at most `cases`. */
  readonly weight: number;
  /** How much of the value is still what was believed beforehand, 0 to 1. */
  readonly priorShare: number;
}

/** How sure a range is that is shown, and one that is needed before a correction is called clear. */
export const SHOWN = 0.95;
/** Eight figures are looked at together: at one in twenty each, one in three runs of pure chance would "find" something. */
export const CLEAR = 0.995;

/**
 * A value with its two ranges.
 * @param rangeAt the two ends of a range that holds the truth with so much chance
 * @param neutral the value that changes nothing
 * @param looks how many figures are looked at side by side: with many, chance alone makes one of them stand out
 */
export function learned(
  value: number,
  neutral: number,
  rangeAt: (chance: number) => readonly [number, number],
  rest: Pick<Learned, 'cases' | 'weight' | 'priorShare'>,
  looks = 1,
): Learned {
  const [low, high] = rangeAt(SHOWN);
  const [lowest, highest] = rangeAt(1 - (1 - CLEAR) / looks);
  return { value, low, high, clear: neutral < lowest || neutral > highest, ...rest };
}
