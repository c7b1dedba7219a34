import type { Cents } from '../../money/cents.ts';

interface Amount {
  readonly cents: Cents;
}

/** More would take too long, and hardly one sum in so many is meant. */
const MOST = 14;
const LARGEST_SET = 8;

/**
 * The sets of two or more that add up to a sum, two at most: a second one is doubt. With more than fourteen to choose from
 * only all of them together are tried.
 */
export function sumsTo<One extends Amount>(sum: Cents, all: readonly One[]): readonly (readonly One[])[] {
  if (all.length < 2) return [];
  if (all.length > MOST) return total(all) === sum ? [all] : [];
  const found: One[][] = [];
  const chosen: One[] = [];
  // What the rest can still come to bounds the search; the amounts have one sign, which is that of the sum.
  const rests = all.map((_, i) => total(all.slice(i)));
  const take = (at: number, left: number): void => {
    if (found.length > 1) return;
    if (left === 0) {
      if (chosen.length > 1) found.push([...chosen]);
      return;
    }
    const one = all[at];
    if (one === undefined || chosen.length === LARGEST_SET || Math.abs(rests[at] ?? 0) < Math.abs(left)) return;
    if (Math.abs(one.cents) <= Math.abs(left)) {
      chosen.push(one);
      take(at + 1, left - one.cents);
      chosen.pop();
    }
    take(at + 1, left);
  };
  take(0, sum);
  return found;
}

const total = (some: readonly Amount[]): number => some.reduce((sum, { cents }) => sum + cents, 0);
