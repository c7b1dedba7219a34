import { type Cents, cents, sumCents } from '../../money/cents.ts';
import type { BankLine } from './bank-line.ts';
import type { BookMove } from './book-move.ts';
import { type Evidence, fitOf } from './fit.ts';
import { namePayees } from './name-payees.ts';
import { near } from './near.ts';
import { numbered } from './numbered.ts';
import type { Open } from './open.ts';
import { alike, pairs } from './pairs.ts';
import { together } from './together.ts';

/** A line of the bank and what was recorded, as they seem to belong together. */
export interface ProposedMatch {
  readonly lines: readonly BankLine[];
  readonly moves: readonly BookMove[];
  /** Whether it starts out ticked. */
  readonly sure: boolean;
  readonly evidence: Evidence;
  /** What the bank has less what the books have. */
  readonly difference: Cents;
  /** Recorded moves that may be meant instead. */
  readonly others: readonly BookMove[];
}

export interface BankMatching {
  readonly proposed: readonly ProposedMatch[];
  /** In the bank and not in the books. */
  readonly lines: readonly BankLine[];
  /** In the books and not at the bank. */
  readonly moves: readonly BookMove[];
}

/**
 * Matches lines of the bank with what was recorded. A line and a move are each used once at most. A match is sure where the
 * amount is the same, something names it (the check's number, the payee, or that nothing speaks against it and it is alone),
 * and no other line or move may be meant as well; all else is offered, not made.
 * @param lines amounts of zero are no lines
 */
export function matchBank(lines: readonly BankLine[], moves: readonly BookMove[]): BankMatching {
  const named = namePayees(lines, moves);
  const open: Open = {
    lines: new Map(named.lines.map((line) => [line.key, line])),
    moves: new Map(named.moves.map((move) => [move.key, move])),
    fitOf,
  };
  const taken = [
    ...pairs(open, 'sure'),
    ...alike(open),
    ...numbered(open),
    ...together(open, 'sure'),
    ...pairs(open, 'offered'),
    ...together(open, 'offered'),
    ...near(open),
  ];
  const [line, move] = [byKey(lines), byKey(moves)];
  const proposed = taken.map((one): ProposedMatch => {
    const [own, recorded] = [line(one.lines), move(one.moves)];
    const difference = cents(total(own) - total(recorded));
    return { ...one, lines: own, moves: recorded, others: move(one.others ?? []), difference };
  });
  return { proposed, lines: line([...open.lines.values()]), moves: move([...open.moves.values()]) };
}

const total = (some: readonly { readonly cents: Cents }[]): number => sumCents(some.map((one) => one.cents));

/** What came in, for what it was read as. */
function byKey<One extends { readonly key: string }>(all: readonly One[]) {
  const known = new Map(all.map((one) => [one.key, one]));
  return (some: readonly { readonly key: string }[]): One[] => some.flatMap(({ key }) => known.get(key) ?? []);
}
