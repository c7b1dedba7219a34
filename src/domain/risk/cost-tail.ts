import { costGrid, doubledUntil, type UncertainCost } from './cost-grid.ts';

/** One amount that a sum of costs can come to exactly, with its chance. */
export interface Atom {
  readonly cents: number;
  readonly chance: number;
}

/** Every sum that costs of a known amount can come to: two for each cost, so only a few costs may be given. */
export function atomsOf(costs: readonly UncertainCost[]): readonly Atom[] {
  let sums = new Map([[0, 1]]);
  for (const { high, chance } of costs) {
    const next = new Map<number, number>();
    const add = (cents: number, more: number) => next.set(cents, (next.get(cents) ?? 0) + more);
    for (const [cents, so] of sums) {
      if (chance < 1) add(cents, so * (1 - chance));
      if (chance > 0) add(cents + high, so * chance);
    }
    sums = next;
  }
  return [...sums].map(([cents, chance]) => ({ cents, chance }));
}

/** So many costs of a known amount are told apart exactly; the smallest of more are spread over a cell each. */
const MOST_EXACT = 9;
const CELLS = 1024;
/** Less than this of a cent is an error of the arithmetic: a deal that just breaks even loses nothing. */
const SAME = 1e-3;

/**
 * The chance that a sum of independent costs is above an amount. Where a ceiling holds retail, nothing is left above a
 * certain cost, and this chance decides the loss: on the coarse grid that serves a smooth curve, it would be off by a cell's.
 * Costs of a known amount are exact to the cent; the rest is laid on a grid of some thousand cells.
 */
export function costTail(costs: readonly UncertainCost[]): (above: number) => number {
  const known = costs.filter(({ low, high }) => low === high).sort((a, b) => b.high - a.high);
  // What a sure line costs at least is certain, and only the rest of it is spread.
  let least = 0;
  let nothing = 1;
  const spread = [...costs.filter(({ low, high }) => low < high), ...known.slice(MOST_EXACT)].map((cost) => {
    const from = cost.chance < 1 || cost.low === cost.high ? 0 : cost.low;
    least += from;
    nothing *= 1 - cost.chance;
    return { ...cost, low: cost.low - from, likely: cost.likely - from, high: cost.high - from };
  });
  const atoms = atomsOf(known.slice(0, MOST_EXACT));
  const most = spread.reduce((sum, { high }) => sum + high, 0);
  const { step, weights } = costGrid(
    spread,
    doubledUntil(1, (h) => h * CELLS >= most),
  );
  // With no spread at all the grid is one certain cell.
  if (spread.length === 0) nothing = 1;
  const beyond = new Float64Array(weights.length + 1);
  for (let k = weights.length - 1; k >= 0; k--) {
    beyond[k] = (beyond[k + 1] ?? 0) + (weights[k] ?? 0) - (k === 0 ? nothing : 0);
  }
  // Each cell's chance lies evenly from half a step below its middle to half a step above.
  const spreadAbove = (x: number) => {
    const at = x / step + 0.5;
    const cell = Math.floor(at);
    if (cell < 0) return beyond[0] ?? 0;
    const next = beyond[cell + 1] ?? 0;
    return next + ((beyond[cell] ?? 0) - next) * (1 - (at - cell));
  };
  return (above) =>
    atoms.reduce((sum, { cents, chance }) => {
      const left = above - least - cents;
      return sum + chance * ((left < -SAME ? nothing : 0) + (spread.length === 0 ? 0 : spreadAbove(left)));
    }, 0);
}
