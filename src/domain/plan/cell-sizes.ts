import type { PricePoints } from './price-points.ts';
import type { Space } from './space.ts';
import type { Cells } from './stage.ts';

/** What there is in all, from now to the end of the purse; whole cents, 0 or more. */
export interface Means {
  readonly cash: number;
  readonly line: number;
  /** Null where there are always enough. */
  readonly places: number | null;
  /** Amounts on the way there, which whole cells should not cut. */
  readonly marks: { readonly cash: readonly number[]; readonly line: readonly number[] };
}

/** How fine the plan is worked out. */
export interface Fineness {
  readonly cells: Cells;
  readonly space: Space;
  /** Price points that a lot's prices are joined to. */
  readonly points: number;
}

/** Cells of cash where nothing else limits them. */
const MOST_CELLS = 2_000;
/** Steps of the recursion: lots × price points × ways × states. Up to about a quarter of a second. */
const MOST_STEPS = { onePool: 1e8, twoPools: 3e7 } as const;
/** Steps up to which money is counted in cells that divide every amount, so that nothing is rounded. */
const MOST_EXACT = 3e7;
const NICE = [1, 2, 5, 10, 25, 50]
  .flatMap((digit) => [digit, digit * 100, digit * 10_000, digit * 1_000_000])
  .sort((a, b) => a - b);

/** Price points of a lot: with 24 the plan is worth about 0.2% less than with all. */
const POINTS = { onePool: 24, twoPools: 12 } as const;

/**
 * The cells that money is counted in: the largest that divides every amount where that is quick enough, so that the plan is
 * exact to the cent; else the smallest round one that is.
 * @param coarser divides the steps that may be taken; 1 for the plan itself
 */
export function cellSizes(lots: readonly PricePoints[], means: Means, coarser = 1): Fineness {
  const pools = means.line > 0 ? 'twoPools' : 'onePool';
  const points = Math.max(6, Math.round(POINTS[pools] / coarser ** 0.25));
  const planes = (means.places ?? 0) + 1;
  const perState = lots.reduce((sum, { prices, ways }) => sum + Math.min(points, prices.length) * ways.length, 1);
  const steps = (cells: Cells): number =>
    perState * planes * countOf(means.cash, cells.cash) * countOf(means.line, cells.line);
  const exact = {
    cash: divisor(lots, [means.cash, ...means.marks.cash], 'cash'),
    line: divisor(lots, [means.line, ...means.marks.line], 'line'),
  };
  const everyPrice = lots.every(({ prices }) => prices.length <= points);
  if (everyPrice && steps(exact) <= MOST_EXACT / coarser) return sized(means, exact, points);
  let cells: Cells = { cash: roundCell(means.cash, exact.cash), line: roundCell(means.line, exact.line) };
  while (steps(cells) > MOST_STEPS[pools] / coarser) {
    const cashFirst = countOf(means.cash, cells.cash) >= countOf(means.line, cells.line);
    cells = cashFirst ? { ...cells, cash: larger(cells.cash) } : { ...cells, line: larger(cells.line) };
  }
  return sized(means, cells, points);
}

const countOf = (money: number, cell: number): number => Math.floor(money / cell) + 1;

function sized(means: Means, cells: Cells, points: number): Fineness {
  const space = {
    cash: countOf(means.cash, cells.cash),
    lines: countOf(means.line, cells.line),
    places: means.places,
  };
  return { cells, space, points };
}

/** The smallest round cell, not below the one that divides everything, with which the money has few enough. */
function roundCell(money: number, exact: number): number {
  if (countOf(money, exact) <= MOST_CELLS) return exact;
  return NICE.find((cell) => countOf(money, cell) <= MOST_CELLS + 1) ?? 1e10;
}

const larger = (cell: number): number => NICE.find((nice) => nice > cell) ?? cell * 2;

/** The largest amount that divides all others: every cost, and what there is. */
function divisor(lots: readonly PricePoints[], money: readonly number[], pool: 'cash' | 'line'): number {
  let common = money.reduce(gcd, 0);
  for (const { ways } of lots) {
    for (const way of ways) {
      for (const amount of way[pool]) {
        common = gcd(common, amount);
        if (common === 1) return 1;
      }
    }
  }
  return Math.max(1, common);
}

function gcd(a: number, b: number): number {
  let [large, small] = [Math.max(a, b), Math.min(a, b)];
  while (small > 0) [large, small] = [small, large % small];
  return large;
}
