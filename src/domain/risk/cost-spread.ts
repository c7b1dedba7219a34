import { costGrid, doubledUntil, expectedCost, type UncertainCost } from './cost-grid.ts';
import { type Atom, atomsOf, costTail } from './cost-tail.ts';

/** Uncertain costs beyond what the deal counts for them, in cents, in cases that exclude each other. */
export interface CostSpread {
  /** Chance, recon and doubt of each case; recon waits for the sale, and so it costs interest too. */
  readonly chances: readonly number[];
  readonly recon: readonly number[];
  readonly doubt: readonly number[];
  /** What doubts come to, all cases of it. */
  readonly doubts: readonly Atom[];
  /** Chance that recon is above an amount, exact where the cases are only near. */
  readonly reconAbove: (cents: number) => number;
}

/** Cells rarer than this are left out; together they could not move a chance by a millionth. */
const RAREST_CELL = 1e-9;
/** So many doubts are told apart; with more, the smallest are counted with recon. */
const MOST_DOUBTS = 3;
/** Cents. */
const FINEST = 1000;
const MOST_CELLS = 512;

/** What the cost lines of a deal count for an uncertain cost: its mean, to the cent. */
export const countedCost = (cost: UncertainCost): number => Math.round(expectedCost(cost) + 1e-6);

/**
 * The cases of a list of costs, on a grid that goes by what the car is worth and not by the costs: one more cost must
 * not look cheaper than it is because it made the grid coarser.
 * @param retail what the car brings, in cents
 */
export function costSpread(costs: readonly UncertainCost[], retail: number): CostSpread {
  const doubtful = costs.filter(({ doubt }) => doubt).sort((a, b) => b.high - a.high);
  const apart = doubtful.slice(0, MOST_DOUBTS);
  const recon = [...costs.filter(({ doubt }) => !doubt), ...doubtful.slice(MOST_DOUBTS)];
  const most = recon.reduce((sum, { high }) => sum + high, 0);
  const { step, weights } = costGrid(
    recon,
    doubledUntil(FINEST, (h) => h * 512 > retail && h * MOST_CELLS >= most),
  );
  const counted = (list: readonly UncertainCost[]) => list.reduce((sum, cost) => sum + countedCost(cost), 0);
  const [doubtCounted, reconCounted] = [counted(apart), counted(recon)];
  const doubts = atomsOf(apart).map(({ cents, chance }) => ({ chance, cents: cents - doubtCounted }));
  const spread = { chances: [] as number[], recon: [] as number[], doubt: [] as number[] };
  for (const atom of doubts) {
    weights.forEach((weight, k) => {
      const chance = weight * atom.chance;
      if (chance < RAREST_CELL) return;
      spread.chances.push(chance);
      spread.recon.push(k * step - reconCounted);
      spread.doubt.push(atom.cents);
    });
  }
  let tail: ((above: number) => number) | undefined;
  return {
    ...spread,
    doubts,
    // Few lots come near a ceiling, so it is made when it is first asked for.
    reconAbove: (cents) => {
      const above = cents + reconCounted;
      if (above < -1 || above >= most) return above < 0 ? 1 : 0;
      tail ??= costTail(recon);
      return tail(above);
    },
  };
}
