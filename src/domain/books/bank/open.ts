import type { Evidence, Fit } from './fit.ts';
import type { NamedMove, ReadLine } from './name-payees.ts';

/** Lines and moves that no match has taken yet. */
export interface Open {
  readonly lines: Map<string, ReadLine>;
  readonly moves: Map<string, NamedMove>;
  readonly fitOf: (line: ReadLine, move: NamedMove) => Fit | null;
}

/** A match that took its lines and moves out of what is open. */
export interface Taken {
  readonly lines: readonly ReadLine[];
  readonly moves: readonly NamedMove[];
  readonly sure: boolean;
  readonly evidence: Evidence;
  readonly others?: readonly NamedMove[];
}

/** Takes a match out of what is open. */
export function take(open: Open, match: Taken): Taken {
  for (const { key } of match.lines) open.lines.delete(key);
  for (const { key } of match.moves) open.moves.delete(key);
  return match;
}
