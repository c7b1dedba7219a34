/** A number from 0 to 1 that goes with a lot, spread evenly over the lots: Weyl's sequence of an irrational step. */
export const even = (n: number, which: number): number =>
  ((n + 1) * Math.sqrt([2, 3, 5, 7, 11, 13][which - 1] ?? 2)) % 1;
