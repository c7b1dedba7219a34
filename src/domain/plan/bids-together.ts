import { choicesOf, everyChoice, fixedBid, triesOf } from './fixed-bids.ts';
import { indexOf, type Space, type Stage, type State, UNPAYABLE } from './space.ts';

/** Up to so many steps every joint choice is tried. */
const MOST_TRIES = 4e6;
/** Up to so many steps each bid is tried again beside the others. */
const MOST_SWEEP = 3e7;

/**
 * Bids for lots that close together, from one state: no joint outcome may cost more than is left.
 * @param next the values after the batch
 * @returns for each lot the number of the price bid up to, −1 for no bid
 */
export function bidsTogether(
  next: Float64Array,
  space: Space,
  stages: readonly Stage[],
  state: State,
): readonly number[] {
  const at = indexOf(space, state);
  if (triesOf(stages, next.length) <= MOST_TRIES) return bestChoice(next, space, stages, at);
  const bids = [...knapsackBids(next, space, stages, state)];
  const steps = stages.reduce((sum, stage) => sum + stage.chance.length, 0) * next.length * 8 * stages.length;
  if (steps <= MOST_SWEEP) tryAgain(bids, next, space, stages, at);
  return bids;
}

function bestChoice(next: Float64Array, space: Space, stages: readonly Stage[], at: number): readonly number[] {
  let best: readonly number[] = stages.map(({ bound }) => bound);
  let most = Number.NEGATIVE_INFINITY;
  everyChoice(next, space, stages, (values, bids) => {
    const value = values[at] as number;
    // Choices come with rising bids: of equal ones the higher is kept.
    if (value < most || value < UNPAYABLE) return;
    most = value;
    best = [...bids];
  });
  return best;
}

/** A knapsack over what the bids could cost together, each bid worth what its prices earn beyond their money's worth later. */
function knapsackBids(next: Float64Array, space: Space, stages: readonly Stage[], state: State): readonly number[] {
  const room = space.places === null ? 0 : state.places;
  const [width, lines] = [state.cash + 1, state.line + 1];
  const size = (room + 1) * lines * width;
  let best: Float64Array = new Float64Array(size);
  const chosen = stages.map((stage) => {
    const into = best.slice();
    const choice = new Int16Array(size).fill(-1);
    const way = new Uint8Array(size);
    const options = optionsOf(next, space, stage, state);
    for (const { bid, worth, costs } of options) {
      for (const [number, cost] of costs.entries()) {
        for (let k = space.places === null ? 0 : 1; k <= room; k++) {
          const fewer = space.places === null ? k : k - 1;
          for (let l = cost.line; l < lines; l++) {
            const here = (k * lines + l) * width;
            const from = (fewer * lines + l - cost.line) * width - cost.cash;
            for (let b = cost.cash; b < width; b++) {
              const value = (best[from + b] as number) + worth;
              if (value < (into[here + b] as number)) continue;
              into[here + b] = value;
              choice[here + b] = bid;
              way[here + b] = number;
            }
          }
        }
      }
    }
    best = into;
    return { choice, way, options };
  });
  // Back from the whole of the state to what each lot took.
  let [k, l, b] = [room, state.line, state.cash];
  const bids = new Array<number>(stages.length).fill(-1);
  for (let lot = stages.length - 1; lot >= 0; lot--) {
    const table = chosen[lot];
    const at = (k * lines + l) * width + b;
    const bid = table?.choice[at] ?? -1;
    const cost = table?.options.find((option) => option.bid === bid)?.costs[table.way[at] ?? 0];
    if (cost === undefined) continue;
    bids[lot] = bid;
    k -= space.places === null ? 0 : 1;
    l -= cost.line;
    b -= cost.cash;
  }
  return bids;
}

interface Option {
  readonly bid: number;
  readonly worth: number;
  readonly costs: readonly { readonly cash: number; readonly line: number }[];
}

/** More than any profit, so that a bid that binds us is always among those taken. */
const MUST = 1e11;

function optionsOf(next: Float64Array, space: Space, stage: Stage, state: State): readonly Option[] {
  const alone = indexOf(space, state);
  const choices = new Set(choicesOf(stage));
  const options: Option[] = [];
  let sum = 0;
  for (let bid = 0; bid < stage.chance.length; bid++) {
    let gain = Number.NEGATIVE_INFINITY;
    const costs = stage.ways.map((way) => ({ cash: way.cash[bid] as number, line: way.line[bid] as number }));
    for (const [i, way] of stage.ways.entries()) {
      const left = {
        cash: state.cash - (costs[i]?.cash ?? 0),
        line: state.line - (costs[i]?.line ?? 0),
        places: state.places - 1,
      };
      if (left.cash < 0 || left.line < 0 || (space.places !== null && left.places < 0)) continue;
      const later = (next[alone] as number) - (next[indexOf(space, left)] as number);
      gain = Math.max(gain, (way.profit[bid] as number) - later);
    }
    if (gain < UNPAYABLE) break;
    sum = stage.rule === 'sealed' ? sum + (stage.chance[bid] as number) : sum + (stage.chance[bid] as number) * gain;
    const worth = stage.rule === 'sealed' ? sum * gain : sum;
    const must = bid >= stage.bound && stage.bound >= 0;
    if (choices.has(bid) && (must || worth > 0)) options.push({ bid, worth: must ? MUST + worth : worth, costs });
  }
  return options;
}

/** Changes one bid at a time while that is worth more, with the others as they are; exact values. */
function tryAgain(bids: number[], next: Float64Array, space: Space, stages: readonly Stage[], at: number): void {
  const worth = (): number => {
    let values = next;
    for (let lot = stages.length - 1; lot >= 0; lot--) {
      const stage = stages[lot];
      if (stage !== undefined) values = fixedBid(values, space, stage, bids[lot] ?? -1);
    }
    return values[at] as number;
  };
  let best = worth();
  for (const [lot, stage] of stages.entries()) {
    const choices = choicesOf(stage);
    for (const step of [1, -1]) {
      for (;;) {
        const before = bids[lot] ?? -1;
        if (!choices.includes(before + step)) break;
        bids[lot] = before + step;
        const value = worth();
        if (value > best) best = value;
        else {
          bids[lot] = before;
          break;
        }
      }
    }
  }
}
