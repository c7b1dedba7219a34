import type { Space, Stage } from './space.ts';
import { planeOf, sizeOf } from './space.ts';
import { stepBack } from './step-back.ts';
import { stepTogether } from './step-together.ts';

/** Lots that close together, and what comes in between the batch before and this one. */
export interface StagedBatch {
  readonly stages: readonly Stage[];
  /** Whole cells of cash, 0 or more. */
  readonly income: number;
  /** Places on the lot that come free; 0 or more. */
  readonly freed: number;
}

/** What there is after the last lot. */
export interface End {
  readonly space: Space;
  /** What a cell of cash that is left over is worth; cents, 0 or more. */
  readonly keptCell: number;
}

/** Called with the values after each batch, from the last batch to the first. They change after the call. */
export type SeeBatch = (batch: number, next: Float64Array) => void;

/**
 * Values of every state before the first batch, from the last lot back.
 * @param together whether lots of one batch can't react to each other; without it they follow one another, which is worth more
 * @param see is shown the values after each batch
 */
export function solve(batches: readonly StagedBatch[], end: End, together: boolean, see?: SeeBatch): Float64Array {
  const { space } = end;
  let next: Float64Array = new Float64Array(sizeOf(space));
  if (end.keptCell !== 0) for (let at = 0; at < next.length; at++) next[at] = (at % space.cash) * end.keptCell;
  let out: Float64Array = new Float64Array(next.length);
  for (let i = batches.length - 1; i >= 0; i--) {
    const batch = batches[i];
    if (batch === undefined) continue;
    see?.(i, next);
    if (together && batch.stages.length > 1) {
      stepTogether(out, next, space, batch.stages);
      [next, out] = [out, next];
    } else {
      for (const stage of [...batch.stages].reverse()) {
        stepBack(out, next, space, stage);
        [next, out] = [out, next];
      }
    }
    if (batch.income > 0) comeIn(next, space, batch.income);
    if (batch.freed > 0) comeFree(next, space, batch.freed);
  }
  return next;
}

/** Values before money came in: those of having so much more. */
function comeIn(values: Float64Array, { cash }: Space, income: number): void {
  for (let row = 0; row < values.length; row += cash) {
    const last = values[row + cash - 1] as number;
    values.copyWithin(row, row + Math.min(income, cash - 1), row + cash);
    values.fill(last, row + Math.max(0, cash - income), row + cash);
  }
}

/** Values before places came free: those of having so many more. */
function comeFree(values: Float64Array, space: Space, freed: number): void {
  if (space.places === null) return;
  const plane = planeOf(space);
  for (let k = 0; k < space.places; k++) {
    const from = Math.min(space.places, k + freed) * plane;
    values.copyWithin(k * plane, from, from + plane);
  }
}
