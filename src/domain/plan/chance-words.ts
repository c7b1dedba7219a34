/** Chances that people say, as parts: [1, 5] is 1 in 5. From small to large. */
const SAID: readonly (readonly [part: number, of: number])[] = [
  ...[50, 40, 30, 25, 20, 15, 12, 10, 9, 8, 7, 6, 5, 4, 3, 2].map((of): [number, number] => [1, of]),
  [3, 5],
  [2, 3],
  [3, 4],
  [4, 5],
  [9, 10],
];

/**
 * A chance as one says it: "about 1 in 5". The nearest of the chances above by odds, so that 1 in 30 is not 1 in 20.
 * @param chance 0 to 1
 */
export function chanceWords(chance: number): string {
  if (chance < 0.015) return 'less than 1 in 60';
  if (chance > 0.94) return 'more than 9 in 10';
  const odds = (p: number): number => Math.log(p / (1 - p));
  let [best, least] = [SAID[0] ?? [1, 50], Number.POSITIVE_INFINITY];
  for (const said of SAID) {
    const off = Math.abs(odds(said[0] / said[1]) - odds(chance));
    if (off < least) [best, least] = [said, off];
  }
  return `about ${best[0]} in ${best[1]}`;
}
