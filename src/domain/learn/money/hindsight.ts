/** A lot that could have been had: what it takes from the purse, and what it was expected to earn. Whole cents. */
export interface Buyable {
  /** 0 or more. */
  readonly cash: number;
  /** Drawn on the floor line, 0 or more. */
  readonly line: number;
  readonly profit: number;
}

/** What there was to spend. */
export interface Limits {
  readonly cash: number;
  readonly line: number;
  readonly places: number;
}

export interface Hindsight {
  /** The most that could have been expected to be earned. */
  readonly profit: number;
  /** The places of the lots in the list that make it. */
  readonly chosen: readonly number[];
}

/**
 * The best choice of lots had every price been known: a knapsack with three limits, exact to the cent, by branch and bound
 * (Martello & Toth 1990, chapter 2). A branch is left when even the best fraction of its lots under the tightest single limit
 * adds nothing.
 */
export function hindsight(lots: readonly Buyable[], limits: Limits): Hindsight {
  const worth = lots
    .map((lot, place) => ({ ...lot, place }))
    .filter(({ cash, line, profit }) => profit > 0 && cash <= limits.cash && line <= limits.line)
    .sort((a, b) => density(b, limits) - density(a, limits) || a.place - b.place);
  const rankings = [
    worth.toSorted((a, b) => perUnit(b.profit, b.cash) - perUnit(a.profit, a.cash)),
    worth.toSorted((a, b) => perUnit(b.profit, b.line) - perUnit(a.profit, a.line)),
    worth.toSorted((a, b) => b.profit - a.profit),
  ].map((order) => order.map(({ place }) => worth.findIndex((one) => one.place === place)));
  let best = { profit: 0, chosen: [] as number[] };
  const chosen: number[] = [];
  const visit = (from: number, left: Limits, profit: number): void => {
    if (profit > best.profit) best = { profit, chosen: [...chosen] };
    if (from === worth.length || left.places === 0) return;
    if (profit + boundOf(worth, rankings, from, left) <= best.profit) return;
    const lot = worth[from];
    if (lot === undefined) return;
    if (lot.cash <= left.cash && lot.line <= left.line) {
      chosen.push(lot.place);
      visit(
        from + 1,
        { cash: left.cash - lot.cash, line: left.line - lot.line, places: left.places - 1 },
        profit + lot.profit,
      );
      chosen.pop();
    }
    visit(from + 1, left, profit);
  };
  visit(0, limits, 0);
  return { profit: best.profit, chosen: best.chosen.sort((a, b) => a - b) };
}

const perUnit = (profit: number, takes: number): number => (takes === 0 ? Number.POSITIVE_INFINITY : profit / takes);

/** Profit for the share of the purse that a lot takes. */
function density({ cash, line, profit }: Buyable, limits: Limits): number {
  const share = (takes: number, of: number) => (takes === 0 ? 0 : takes / of);
  return perUnit(profit, share(cash, limits.cash) + share(line, limits.line) + 1 / Math.max(1, limits.places));
}

/** The most that the lots from a place on can add, by each limit alone and in fractions; the least of the three. */
function boundOf(
  worth: readonly Buyable[],
  rankings: readonly (readonly number[])[],
  from: number,
  left: Limits,
): number {
  const bounds = (['cash', 'line', 'places'] as const).map((limit, i) => {
    let room = left[limit];
    let sum = 0;
    for (const place of rankings[i] ?? []) {
      const lot = worth[place];
      if (place < from || lot === undefined) continue;
      const takes = limit === 'places' ? 1 : lot[limit];
      if (takes > room) return sum + (takes === 0 ? lot.profit : (lot.profit * room) / takes);
      room -= takes;
      sum += lot.profit;
    }
    return sum;
  });
  return Math.min(...bounds);
}
