/** A chance as people say it: "1 in 8", "3 in 10", "less than 1 in 100". */
export function oneIn(chance: number): string {
  if (chance < 0.01) return 'less than 1 in 100';
  if (chance > 0.99) return 'more than 99 in 100';
  // Past a third, "1 in 2" would be too coarse.
  if (chance > 0.34) return `${Math.round(chance * 10)} in 10`;
  return `1 in ${Math.round(1 / chance)}`;
}

/** "12%". */
export const percentWords = (chance: number): string => `${Number((chance * 100).toFixed(chance < 0.1 ? 1 : 0))}%`;
