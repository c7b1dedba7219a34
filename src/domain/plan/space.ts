/**
 * The states that the plan goes over: how many cells of cash and of the line, and how many places, are left. State (b, l, k)
 * is number `(k × lines + l) × cash + b`.
 */
export interface Space {
  /** Cells of cash, the empty one included. */
  readonly cash: number;
  /** Cells of the floor line, the empty one included; 1 without a line. */
  readonly lines: number;
  /** Places; null where there are always enough. */
  readonly places: number | null;
}

export interface State {
  readonly cash: number;
  readonly line: number;
  /** Ignored where there are always enough. */
  readonly places: number;
}

/** Numbers from the start of one place to the next. */
export const planeOf = ({ cash, lines }: Space): number => cash * lines;
export const sizeOf = (space: Space): number => planeOf(space) * ((space.places ?? 0) + 1);

export function indexOf(space: Space, { cash, line, places }: State): number {
  return ((space.places === null ? 0 : places) * space.lines + line) * space.cash + cash;
}

/** A lot as the recursion needs it: money in whole cells. */
export interface Stage {
  readonly chance: Float64Array;
  readonly ways: readonly StageWay[];
  /** Number of the last of the lot's price points that each price stands for. */
  readonly upTo: Int32Array;
  readonly rule: StageRule;
  /** Number of the price up to which we are bound: that money may not be spent on earlier lots. −1 where we are not. */
  readonly bound: number;
  /** Whether a price that is taken means that every lower one is. */
  readonly falling: boolean;
}

export interface StageWay {
  readonly cash: Int32Array;
  readonly line: Int32Array;
  readonly profit: Float64Array;
}

/** How a bid is chosen: the best at each state; the best that is paid as bid (a sealed sale); the max bid as far as the purse reaches. */
export type StageRule = 'best' | 'sealed' | 'max';

/** The value of a state in which money that we are bound to is gone. */
export const NEVER_WORTH = -1e15;
/** Below this a value has such a state in it. */
export const UNPAYABLE = -1e12;
