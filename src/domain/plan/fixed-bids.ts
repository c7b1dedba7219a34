import { NEVER_WORTH, planeOf, type Space, type Stage, UNPAYABLE } from './space.ts';

/** The values before a lot on which the bid is the same at every state; no bid where `bid` is −1. Sealed lots pay their bid. */
export function fixedBid(next: Float64Array, space: Space, stage: Stage, bid: number): Float64Array {
  if (bid < 0) return next;
  const out = new Float64Array(next.length).fill(NEVER_WORTH);
  const plane = planeOf(space);
  const first = stage.rule === 'sealed' ? bid : 0;
  const chances = chancesOf(stage, bid);
  const won = chances.reduce((a, b) => a + b, 0);
  const limited = space.places !== null;
  for (let k = limited ? 1 : 0; k <= (space.places ?? 0); k++) {
    for (let l = 0; l < space.lines; l++) {
      for (let b = 0; b < space.cash; b++) {
        const at = k * plane + l * space.cash + b;
        let value = (1 - won) * (next[at] as number);
        for (let j = first; j <= bid; j++) {
          const best = bestAfter(next, stage, j, { space, from: (limited ? k - 1 : k) * plane, l, b });
          value = best < UNPAYABLE ? NEVER_WORTH : value + (chances[j] as number) * best;
          if (value < UNPAYABLE) break;
        }
        out[at] = value < UNPAYABLE ? NEVER_WORTH : value;
      }
    }
  }
  return out;
}

/** Chance to pay each price with this bid. */
function chancesOf({ chance, rule }: Stage, bid: number): Float64Array {
  const chances = chance.slice(0, bid + 1);
  if (rule !== 'sealed') return chances;
  const won = chances.reduce((a, b) => a + b, 0);
  return chances.fill(0).fill(won, bid);
}

interface From {
  readonly space: Space;
  /** Where the plane with one place fewer starts. */
  readonly from: number;
  readonly l: number;
  readonly b: number;
}

/** Profit and value after winning at a price, by the better way to pay; {@link NEVER_WORTH} where none can be paid. */
function bestAfter(next: Float64Array, stage: Stage, j: number, { space, from, l, b }: From): number {
  let best = NEVER_WORTH;
  for (const way of stage.ways) {
    const cash = b - (way.cash[j] as number);
    const line = l - (way.line[j] as number);
    if (cash < 0 || line < 0) continue;
    const value = (way.profit[j] as number) + (next[from + line * space.cash + cash] as number);
    if (value > best) best = value;
  }
  return best;
}

/** Bids that may be chosen on a lot that closes with others: any price, or none, as far as nothing binds us. */
export function choicesOf({ chance, rule, bound }: Stage): readonly number[] {
  const last = chance.length - 1;
  if (rule === 'max') return bound >= 0 ? [last] : [-1, last];
  return Array.from({ length: last - bound + 1 }, (_, i) => bound + i);
}

/** Steps that trying every joint choice takes (states × prices × ways to pay), for a gate before it is tried. */
export function triesOf(stages: readonly Stage[], states: number): number {
  let [choices, steps] = [1, 0];
  for (const stage of [...stages].reverse()) {
    const bids = choicesOf(stage);
    choices *= bids.length;
    const prices = bids.reduce((sum, bid) => sum + bid + 1, 0) / bids.length;
    steps += choices * (prices * stage.ways.length + 1);
  }
  return (steps + choices) * states;
}

/**
 * Every joint choice of bids for lots that close together, with the values it gives at each state.
 * @param see is shown each choice once; its values change after the call
 */
export function everyChoice(
  next: Float64Array,
  space: Space,
  stages: readonly Stage[],
  see: (values: Float64Array, bids: readonly number[]) => void,
): void {
  const bids = new Array<number>(stages.length).fill(-1);
  const choose = (lot: number, values: Float64Array): void => {
    const stage = stages[lot];
    if (stage === undefined) {
      see(values, bids);
      return;
    }
    for (const bid of choicesOf(stage)) {
      bids[lot] = bid;
      choose(lot - 1, fixedBid(values, space, stage, bid));
    }
  };
  choose(stages.length - 1, next);
}
