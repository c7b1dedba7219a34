import { normalQuantile } from '../../src/domain/statistics/normal.ts';

/** Chance that comes out the same every time. */
export interface Dice {
  /** From 0 to 1, neither included. */
  readonly uniform: () => number;
  readonly normal: () => number;
}

/** mulberry32, turned into normal values where they are asked for. */
export function diceOf(seed: number): Dice {
  let state = seed;
  const uniform = () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return (((t ^ (t >>> 14)) >>> 0) + 0.5) / 4294967296;
  };
  return { uniform, normal: () => normalQuantile(uniform()) };
}
