import { groupBy } from '../../group-by.ts';
import { daysBetween } from '../../time/calendar-day.ts';
import { type Fit, strength } from './fit.ts';
import type { NamedMove, ReadLine } from './name-payees.ts';
import { type Open, type Taken, take } from './open.ts';

interface Pair {
  readonly line: ReadLine;
  readonly move: NamedMove;
  readonly fit: Fit;
}

/** Every open line and move of one amount that may be each other. */
export function pairsOf({ lines, moves, fitOf }: Open): readonly Pair[] {
  const byAmount = groupBy(moves.values(), (move) => move.cents);
  return [...lines.values()].flatMap((line) =>
    (byAmount.get(line.cents) ?? []).flatMap((move): Pair[] => {
      const found = fitOf(line, move);
      return found === null ? [] : [{ line, move, fit: found }];
    }),
  );
}

/** One line and one move of the same amount. Offered ones go by what speaks for them, then by the days between. */
export function pairs(open: Open, which: 'sure' | 'offered'): Taken[] {
  const all = pairsOf(open);
  const ofLine = groupBy(all, ({ line }) => line.key);
  const ofMove = groupBy(all, ({ move }) => move.key);
  // A rival has as much to speak for it; where nothing is named, any other pair is one.
  const isRival = (pair: Pair, other: Pair) =>
    other !== pair && (pair.fit.evidence === 'silent' || strength(other.fit) <= strength(pair.fit));
  const isAlone = (pair: Pair) =>
    ![...(ofLine.get(pair.line.key) ?? []), ...(ofMove.get(pair.move.key) ?? [])].some((other) => isRival(pair, other));
  const sure = which === 'sure';
  const days = ({ line, move }: Pair) => Math.abs(daysBetween(move.date, line.date));
  return all
    .filter((pair) => !sure || (pair.fit.clear && isAlone(pair)))
    .toSorted((a, b) => strength(a.fit) - strength(b.fit) || days(a) - days(b))
    .flatMap(({ line, move, fit: { evidence } }) => {
      if (!open.lines.has(line.key) || !open.moves.has(move.key)) return [];
      const others = (ofLine.get(line.key) ?? []).flatMap((one) => (one.move === move ? [] : [one.move]));
      return [take(open, { lines: [line], moves: [move], evidence, sure, ...(!sure && { others }) })];
    });
}

/**
 * As many lines as moves of one payee and one amount, and nothing else of that amount: in the order of their days each is
 * paid, whichever is which. Made only where every line may be every one of them without doubt or the days decide.
 */
export function alike(open: Open): Taken[] {
  const all = pairsOf(open);
  const groups = groupBy(all, ({ line }) => line.cents);
  return [...groups.values()].flatMap((group) => {
    const lines = [...new Set(group.map(({ line }) => line))].sort(byDay);
    const moves = [...new Set(group.map(({ move }) => move))].sort(byDay);
    const [first] = moves;
    const isOne = moves.every((move) => move.payeeKey === first?.payeeKey && move.number === undefined);
    if (lines.length !== moves.length || lines.length < 2 || !isOne) return [];
    const inOrder = lines.map((line, i) => group.find((pair) => pair.line === line && pair.move === moves[i]));
    if (!inOrder.every((pair) => pair?.fit.evidence === 'payee' && pair.fit.clear)) return [];
    return inOrder.flatMap((pair) =>
      pair === undefined ? [] : [take(open, { lines: [pair.line], moves: [pair.move], evidence: 'payee', sure: true })],
    );
  });
}

const byDay = (
  a: { readonly date: string; readonly key: string },
  b: { readonly date: string; readonly key: string },
) => (a.date === b.date ? (a.key < b.key ? -1 : 1) : a.date < b.date ? -1 : 1);
