import { groupBy } from '../../group-by.ts';
import type { Cents } from '../../money/cents.ts';
import { type Open, type Taken, take } from './open.ts';

/** A difference within which a line may still be a move: a fee that was kept, a slip of the pen. */
const NEAR_CENTS = 5000;
const NEAR_SHARE = 0.02;

/** Whether two amounts differ a little, or by figures that changed places. */
export function isNear(one: Cents, other: Cents): boolean {
  const apart = Math.abs(one - other);
  if (apart <= Math.min(Math.abs(other) / 2, Math.max(NEAR_CENTS, Math.abs(other) * NEAR_SHARE))) return true;
  return [...String(Math.abs(one))].sort().join() === [...String(Math.abs(other))].sort().join();
}

/** One line and one move of one payee whose amounts are alike. */
export function near(open: Open): Taken[] {
  const byPayee = groupBy(open.moves.values(), ({ payeeKey }) => payeeKey);
  return [...open.lines.values()].flatMap((line) => {
    const found = [...line.payees]
      .flatMap((payee) => byPayee.get(payee) ?? [])
      .filter((move) => open.moves.has(move.key) && isNear(line.cents, move.cents) && open.fitOf(line, move)?.clear)
      .toSorted((a, b) => Math.abs(line.cents - a.cents) - Math.abs(line.cents - b.cents));
    const [best, ...others] = found;
    if (best === undefined) return [];
    return [take(open, { lines: [line], moves: [best], evidence: 'payee', sure: false, others })];
  });
}
