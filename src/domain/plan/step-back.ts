import { NEVER_WORTH, planeOf, type Space, type Stage, UNPAYABLE } from './space.ts';

/**
 * One step of the recursion over lots in closing order,
 *
 *     V(b, k) = V′(b, k) + Σ chance × max(0, profit + V′(b − cash, k − 1) − V′(b, k)),
 *
 * where V′ is the value after this lot: profit must beat what the money and the place are worth in the lots still to come
 * (Kleywegt & Papastavrou, Operations Research 46, 1998; the bid up to that price is the best because profit falls with it).
 * @param out where the values before this lot go
 * @param next the values after it
 */
export function stepBack(out: Float64Array, next: Float64Array, space: Space, stage: Stage): void {
  out.set(next);
  const plane = planeOf(space);
  const limited = space.places !== null;
  const step = stage.falling && stage.rule !== 'sealed' ? (stage.ways.length === 1 ? oneWay : anyWays) : anyRule;
  for (let k = limited ? 1 : 0; k <= (space.places ?? 0); k++) {
    const here = k * plane;
    const after = limited ? here - plane : here;
    for (let l = 0; l < space.lines; l++) step(out, next, space, stage, { here: here + l * space.cash, after, l });
  }
  if (stage.bound >= 0) holdMoney(out, next, space, stage);
}

/** All cells of cash at one count of places and one cell of the line. */
interface Row {
  /** Where the row starts. */
  readonly here: number;
  /** Where the plane with one place fewer starts. */
  readonly after: number;
  readonly l: number;
}

/** What a gain must be above for its price to be taken: nothing, or, where the bid is not a choice, what can be paid at all. */
const thresholdAt = ({ rule, bound }: Stage, j: number): number => (rule === 'max' || j <= bound ? UNPAYABLE : 0);

/** Where a price that is taken means that every lower one is, each price can be asked about on its own, all cells at once. */
function oneWay(out: Float64Array, next: Float64Array, space: Space, stage: Stage, { here, after, l }: Row): void {
  const [way] = stage.ways;
  if (way === undefined) return;
  const width = space.cash;
  const cur = next.subarray(here, here + width);
  const into = out.subarray(here, here + width);
  for (let j = 0; j < stage.chance.length; j++) {
    const line = way.line[j] as number;
    const cost = way.cash[j] as number;
    if (line > l || cost >= width) break;
    const from = after + (l - line) * width;
    const low = next.subarray(from, from + width);
    const profit = way.profit[j] as number;
    const chance = stage.chance[j] as number;
    const above = thresholdAt(stage, j);
    for (let b = cost; b < width; b++) {
      const gain = profit + (low[b - cost] as number) - (cur[b] as number);
      if (gain > above) into[b] = (into[b] as number) + chance * gain;
    }
  }
}

/** The same with several ways to pay: the better one at each price and state. */
function anyWays(out: Float64Array, next: Float64Array, space: Space, stage: Stage, { here, after, l }: Row): void {
  const width = space.cash;
  const cur = next.subarray(here, here + width);
  const into = out.subarray(here, here + width);
  const best = new Float64Array(width);
  for (let j = 0; j < stage.chance.length; j++) {
    let least = width;
    for (const way of stage.ways) {
      const cost = way.cash[j] as number;
      const line = way.line[j] as number;
      if (line > l || cost >= width) continue;
      const from = after + (l - line) * width;
      const low = next.subarray(from, from + width);
      const profit = way.profit[j] as number;
      // Cells that only this way reaches take it; the others take the better of the two.
      if (least === width) {
        for (let b = cost; b < width; b++) best[b] = profit + (low[b - cost] as number);
        least = cost;
      } else {
        for (let b = Math.max(cost, least); b < width; b++) {
          const value = profit + (low[b - cost] as number);
          if (value > (best[b] as number)) best[b] = value;
        }
        for (let b = cost; b < least; b++) best[b] = profit + (low[b - cost] as number);
        least = Math.min(least, cost);
      }
    }
    if (least === width) break;
    const chance = stage.chance[j] as number;
    const above = thresholdAt(stage, j);
    for (let b = least; b < width; b++) {
      const gain = (best[b] as number) - (cur[b] as number);
      if (gain > above) into[b] = (into[b] as number) + chance * gain;
    }
  }
}

/** Every rule, with any number of ways to pay, state by state. */
function anyRule(out: Float64Array, next: Float64Array, { cash: width }: Space, stage: Stage, row: Row): void {
  const gains = new Float64Array(stage.chance.length);
  for (let b = 0; b < width; b++) {
    const cur = next[row.here + b] as number;
    if (cur < UNPAYABLE) {
      out[row.here + b] = NEVER_WORTH;
      continue;
    }
    let known = 0;
    for (; known < gains.length; known++) {
      let best = NEVER_WORTH;
      for (const way of stage.ways) {
        const left = b - (way.cash[known] as number);
        const line = row.l - (way.line[known] as number);
        if (left < 0 || line < 0) continue;
        const gain = (way.profit[known] as number) + (next[row.after + line * width + left] as number) - cur;
        if (gain > best) best = gain;
      }
      // A bid binds to every price below it, so where one can't be paid no higher one is bid.
      if (best < UNPAYABLE) break;
      gains[known] = best;
    }
    out[row.here + b] = cur + worthOf(stage, gains, known);
  }
}

/** What a stage adds at a state, by its rule; `known` prices can be paid. */
export function worthOf({ chance, rule, falling, bound }: Stage, gains: Float64Array, known: number): number {
  let sum = 0;
  let best = bound < 0 ? 0 : Number.NEGATIVE_INFINITY;
  for (let j = 0; j < known; j++) {
    const gain = gains[j] as number;
    // At a sealed sale the bid itself is paid, whichever rival it beats.
    sum = rule === 'sealed' ? sum + (chance[j] as number) : sum + (chance[j] as number) * gain;
    if (j < bound) continue;
    const worth = rule === 'sealed' ? sum * gain : sum;
    if (worth > best) best = worth;
    else if (rule === 'best' && falling && gain < 0) break;
  }
  return rule === 'max' ? sum : best;
}

/**
 * Takes the worth from states that can't pay for what binds us, or could not pay for what binds us later if they did.
 */
export function holdMoney(out: Float64Array, next: Float64Array, space: Space, { ways, bound }: Stage): void {
  const plane = planeOf(space);
  const limited = space.places !== null;
  for (let at = 0; at < out.length; at++) {
    const after = limited ? at - plane : at;
    const line = Math.floor((at % plane) / space.cash);
    const cash = at % space.cash;
    const pays =
      after >= 0 &&
      ways.some((way) => {
        const [c, l] = [way.cash[bound] as number, way.line[bound] as number];
        return c <= cash && l <= line && (next[after - l * space.cash - c] as number) > UNPAYABLE;
      });
    if (!pays) out[at] = NEVER_WORTH;
  }
}
