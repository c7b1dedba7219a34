/** What one standing bid may cost: at each price, and how likely each is at each level of the weekend. */
export interface Stake {
  /** Whole cents at each price. */
  readonly cash: readonly number[];
  readonly line: readonly number[];
  /** For each level the chance of each price. */
  readonly chances: readonly (readonly number[])[];
}

/** What is left, whole cents; places null where there are always enough. */
export interface Room {
  readonly cash: number;
  readonly line: number;
  readonly places: number | null;
}

/** Parts that a sum of money is counted in, each cost up to a whole part, so that the chance is never said too small. */
const PARTS = 400;

/**
 * The chance that bids which stand at one time together win more than there is. It is averaged over the levels that the weekend
 * may have: lots taken as independent would make it several times too small, because a soft weekend wins all of them.
 * Running out of cash, of the line and of places are added up, which is no less than the chance of any of them.
 * @param weights how likely each level is, adding up to 1
 */
export function overChance(stakes: readonly Stake[], weights: readonly number[], room: Room): number {
  return weights.reduce((sum, weight, level) => {
    const each = (cost: (stake: Stake) => readonly number[], left: number, parts: number) =>
      beyond(
        stakes.map((stake) => ({ cost: cost(stake), chance: stake.chances[level] ?? [] })),
        left,
        parts,
      );
    const cash = each(({ cash }) => cash, room.cash, PARTS);
    const line = stakes.some((stake) => stake.line.some((amount) => amount > 0))
      ? each(({ line }) => line, room.line, PARTS)
      : 0;
    const one = ({ cash: prices }: Stake) => prices.map(() => 1);
    const cars = room.places === null ? 0 : each(one, room.places, room.places);
    return sum + weight * Math.min(1, cash + line + cars);
  }, 0);
}

/** The chance that independent costs add up to more than `left`, each counted up to whole parts of it. */
function beyond(
  bids: readonly { readonly cost: readonly number[]; readonly chance: readonly number[] }[],
  left: number,
  parts: number,
): number {
  // With nothing left any cost is too much.
  const part = left > 0 && parts > 0 ? left / parts : 0;
  let held = new Float64Array(parts + 1);
  held[0] = 1;
  for (const { cost, chance } of bids) {
    const after = new Float64Array(parts + 1);
    const won = chance.reduce((sum, each) => sum + each, 0);
    for (let at = 0; at <= parts; at++) after[at] = (held[at] as number) * Math.max(0, 1 - won);
    cost.forEach((amount, j) => {
      const step = amount === 0 ? 0 : part === 0 ? parts + 1 : Math.ceil(amount / part - 1e-9);
      const share = chance[j] ?? 0;
      if (share === 0) return;
      for (let at = 0; at + step <= parts; at++)
        after[at + step] = (after[at + step] as number) + share * (held[at] as number);
    });
    held = after;
  }
  return Math.max(0, 1 - held.reduce((sum, each) => sum + each, 0));
}
