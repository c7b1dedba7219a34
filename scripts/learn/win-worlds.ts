import { type WonAndSold, winCorrection } from '../../src/domain/learn/corrections/win-correction.ts';
import { type Dice, diceOf } from './dice.ts';

/** An invented market. Spreads are standard deviations of logarithms. */
export interface WinWorld {
  readonly name: string;
  /** What the car is worth to all alike, and to each beside that. */
  readonly common: number;
  readonly own: number;
  /** How far our estimate is off, and theirs. */
  readonly error: number;
  readonly rivalError: number;
  readonly rivals: number;
}

export const WIN_WORLDS: readonly WinWorld[] = [
  { name: 'private values, rough estimate', common: 0, own: 0.08, error: 0.08, rivalError: 0, rivals: 5 },
  { name: 'common and private values', common: 0.1, own: 0.06, error: 0.08, rivalError: 0.06, rivals: 5 },
  { name: 'many good rivals', common: 0.1, own: 0.06, error: 0.05, rivalError: 0.05, rivals: 8 },
  { name: 'almost no curse', common: 0.03, own: 0.08, error: 0.04, rivalError: 0.03, rivals: 4 },
];

/** After how many cars that were won and sold the correction is looked at. */
export const WINS = [3, 10, 20, 40] as const;

/** The usual margin between an estimate and the bid; every bidder takes it, so it drops out of the comparison. */
const MARGIN = 0.1;

/** One lot: our estimate, what the car really brings us and the strongest rival's bid before the margin, as logarithms. */
interface Drawn {
  readonly estimate: number;
  readonly value: number;
  readonly rival: number;
}

function draw({ common, own, error, rivalError, rivals }: WinWorld, { normal }: Dice): Drawn {
  const shared = common * normal();
  const value = shared + own * normal();
  let rival = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < rivals; i++) rival = Math.max(rival, shared + Math.hypot(own, rivalError) * normal());
  return { estimate: value + error * normal(), value, rival };
}

/** What a world came to: profit beyond the usual margin, per lot bid on, in shares of an average car's value. */
export interface WorldGap {
  readonly naive: number;
  readonly best: number;
  /** Share of the way from naive to best after so many wins; in the order of {@link WINS}. */
  readonly closed: readonly number[];
}

/**
 * How much of the profit between bidding by the estimate and the best fixed haircut the correction brings.
 * @param logs how many buyers learn, each from lots of his own
 * @param lots on which every haircut is judged, the same for all
 */
export function worldGap(
  world: WinWorld,
  { logs, lots, seed }: { logs: number; lots: number; seed: number },
): WorldGap {
  const dice = diceOf(seed);
  const judged = Array.from({ length: lots }, () => draw(world, dice));
  const profitAt = (offset: number) =>
    judged.reduce(
      (sum, { estimate, value, rival }) =>
        estimate + offset > rival ? sum + (Math.exp(value) - Math.exp(rival)) * (1 - MARGIN) : sum,
      0,
    ) / lots;
  // A table of offsets: every buyer's is looked up in it, and the best one is its highest.
  const steps = Array.from({ length: 61 }, (_, i) => -0.25 + i * 0.005);
  const table = steps.map(profitAt);
  const at = (offset: number) => {
    const place = Math.min(59.999, Math.max(0, (offset + 0.25) / 0.005));
    const low = Math.floor(place);
    return (table[low] ?? 0) + (place - low) * ((table[low + 1] ?? 0) - (table[low] ?? 0));
  };
  const naive = at(0);
  const best = Math.max(...table);
  const gained = WINS.map(() => 0);
  for (let log = 0; log < logs; log++) {
    const cars = wonCars(world, dice, WINS.at(-1) ?? 0);
    for (const [i, wins] of WINS.entries()) {
      const { haircut } = winCorrection(cars.slice(0, wins), MARGIN);
      gained[i] = (gained[i] ?? 0) + (at(Math.log(1 - haircut)) - naive) / logs;
    }
  }
  return { naive, best, closed: gained.map((gain) => gain / (best - naive)) };
}

/** Cars that were won by bidding the estimate less the margin, against rivals who do the same. */
function wonCars(world: WinWorld, dice: Dice, count: number): readonly WonAndSold[] {
  const cars: WonAndSold[] = [];
  while (cars.length < count) {
    const { estimate, value, rival } = draw(world, dice);
    if (estimate > rival)
      cars.push({ estimate: Math.exp(estimate), paid: Math.exp(rival) * (1 - MARGIN), realised: Math.exp(value) });
  }
  return cars;
}
