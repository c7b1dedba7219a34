import { choicesOf, everyChoice, triesOf } from './fixed-bids.ts';
import { indexOf, NEVER_WORTH, planeOf, type Space, type Stage, UNPAYABLE } from './space.ts';
import { holdMoney } from './step-back.ts';

/** How many prices of a car's money the values are worked out for; between them they are interpolated. */
const RATES = 4;

/** Up to so many steps every joint choice is tried. */
const MOST_TRIES = 2e6;

/**
 * One step over lots that close together. Nobody can change a bid for what the others came to, so the bids together may not be
 * able to cost more than is left: a knapsack over what every bid could cost, each bid's worth being what its prices earn
 * beyond what a car's money is worth later. That later worth is taken at each state from the values after the batch, at a few
 * rates, so this step is near and not exact; the bids that are shown are found anew for the purse as it is. A few lots with few
 * prices are tried in every combination instead, which is exact.
 */
export function stepTogether(out: Float64Array, next: Float64Array, space: Space, stages: readonly Stage[]): void {
  if (triesOf(stages, next.length) <= MOST_TRIES) {
    out.fill(NEVER_WORTH);
    everyChoice(next, space, stages, (values) => {
      for (let at = 0; at < out.length; at++)
        if ((values[at] as number) > (out[at] as number)) out[at] = values[at] as number;
    });
    return;
  }
  const car = typicalCar(stages);
  const worths = worthOfCar(next, space, car);
  const most = worths.reduce((a, b) => (b < -UNPAYABLE ? Math.max(a, b) : a), 0);
  const tables = Array.from({ length: RATES }, (_, i) => knapsack(space, stages, car, (most * i) / (RATES - 1)));
  for (let at = 0; at < next.length; at++) {
    const along = most > 0 ? Math.min(RATES - 1, ((worths[at] as number) / most) * (RATES - 1)) : 0;
    const low = Math.min(RATES - 2, Math.floor(along));
    const [below, above] = [tables[low]?.[at] ?? 0, tables[low + 1]?.[at] ?? 0];
    out[at] = (next[at] as number) + Math.max(0, below + (above - below) * (along - low));
  }
  for (const stage of stages) if (stage.bound >= 0) holdMoney(out, next, space, stage);
}

interface Car {
  readonly cash: number;
  readonly line: number;
}

/** The middle price of each lot, by its first way to pay, on average; at least one cell. */
function typicalCar(stages: readonly Stage[]): Car {
  let [cash, line] = [0, 0];
  for (const { ways, chance } of stages) {
    const middle = Math.floor(chance.length / 2);
    cash += ways[0]?.cash[middle] ?? 0;
    line += ways[0]?.line[middle] ?? 0;
  }
  return { cash: Math.max(1, Math.round(cash / stages.length)), line: Math.round(line / stages.length) };
}

/** What the money and place of a typical car are worth at each state. */
function worthOfCar(next: Float64Array, space: Space, car: Car): Float64Array {
  const worths = new Float64Array(next.length);
  const plane = planeOf(space);
  for (let at = 0; at < next.length; at++) {
    const places = Math.floor(at / plane);
    const line = Math.floor((at % plane) / space.cash);
    const cash = at % space.cash;
    const left = {
      cash: Math.max(0, cash - car.cash),
      line: Math.max(0, line - car.line),
      places: Math.max(0, places - 1),
    };
    worths[at] = Math.max(0, (next[at] as number) - (next[indexOf(space, left)] as number));
  }
  return worths;
}

/** The most that bids earn whose costs together stay within each state, when a typical car's money is worth `rate`. */
function knapsack(space: Space, stages: readonly Stage[], car: Car, rate: number): Float64Array {
  let best: Float64Array = new Float64Array((space.places === null ? 1 : space.places + 1) * planeOf(space));
  for (const stage of stages) {
    const into = best.slice();
    const worth = bidWorths(stage, car, rate);
    const choices = choicesOf(stage);
    for (let j = 0; j < worth.length; j++) {
      const gained = worth[j] as number;
      if (!choices.includes(j) || (stage.bound < 0 && gained <= 0)) continue;
      const forced = j === stage.bound;
      for (const way of stage.ways) {
        addBid(into, best, space, { cash: way.cash[j] as number, line: way.line[j] as number }, gained, forced);
      }
    }
    best = into;
  }
  return best;
}

function addBid(
  into: Float64Array,
  best: Float64Array,
  space: Space,
  cost: Car,
  gained: number,
  forced: boolean,
): void {
  const plane = planeOf(space);
  const limited = space.places !== null;
  for (let k = limited ? 1 : 0; k <= (space.places ?? 0); k++) {
    for (let l = cost.line; l < space.lines; l++) {
      const here = k * plane + l * space.cash;
      const from = (limited ? k - 1 : k) * plane + (l - cost.line) * space.cash - cost.cash;
      for (let b = cost.cash; b < space.cash; b++) {
        const value = (best[from + b] as number) + gained;
        if (forced || value > (into[here + b] as number)) into[here + b] = value;
      }
    }
  }
}

/** What a bid at each price of a stage earns, by the better way to pay at each price below it. */
function bidWorths({ chance, ways, rule }: Stage, car: Car, rate: number): Float64Array {
  const worths = new Float64Array(chance.length);
  const whole = car.cash + car.line;
  let sum = 0;
  for (let j = 0; j < chance.length; j++) {
    let gain = Number.NEGATIVE_INFINITY;
    for (const way of ways) {
      const size = ((way.cash[j] as number) + (way.line[j] as number)) / whole;
      gain = Math.max(gain, (way.profit[j] as number) - rate * size);
    }
    if (rule === 'sealed') {
      sum += chance[j] as number;
      worths[j] = sum * gain;
    } else {
      sum += (chance[j] as number) * gain;
      worths[j] = sum;
    }
  }
  return worths;
}
