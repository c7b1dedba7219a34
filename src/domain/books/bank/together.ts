import { groupBy } from '../../group-by.ts';
import type { Cents } from '../../money/cents.ts';
import { addDays } from '../../time/calendar-day.ts';
import type { LocalDate } from '../../time/local-date.ts';
import { EVIDENCE, strength } from './fit.ts';
import type { NamedMove, ReadLine } from './name-payees.ts';
import { type Open, type Taken, take } from './open.ts';
import { pairsOf } from './pairs.ts';
import { sumsTo } from './sums-to.ts';

/** How long before the bank's day something may be recorded that a line without a name adds up. */
const DAYS = [-1, 0, 1, 2, 3, 4, 5] as const;

/** One line for several moves, or several lines for one move: of one payee, or, where nobody is named, of a few days. */
export function together(open: Open, which: 'sure' | 'offered'): Taken[] {
  const sure = which === 'sure';
  // What may be each other one by one is no part of a sum that is made unasked.
  const single = sure ? new Set(pairsOf(open).flatMap(({ line, move }) => [line, move])) : new Set();
  const near = nearby(open);
  const made: Taken[] = [];
  for (const line of [...open.lines.values()]) {
    const may = smaller(line, near.moves(line)).filter(
      (move) => open.moves.has(move.key) && mayBe(open, line, move, which),
    );
    const sets = single.has(line) ? [] : sumsTo(line.cents, may);
    const [moves, instead = []] = sets;
    const evidence = line.payees.size > 0 ? 'payee' : 'silent';
    if (moves === undefined) continue;
    if (sure && (sets.length > 1 || evidence !== 'payee' || moves.some((move) => single.has(move)))) continue;
    const others = instead.filter((move) => !moves.includes(move));
    made.push(take(open, { lines: [line], moves, evidence, sure, ...(!sure && { others }) }));
  }
  // That a payment was made in parts is not what was recorded, so it is asked.
  if (sure) return made;
  for (const move of [...open.moves.values()]) {
    const may = smaller(move, near.lines(move)).filter(
      (line) => open.lines.has(line.key) && mayBe(open, line, move, which),
    );
    const [lines] = sumsTo(move.cents, may);
    if (lines !== undefined) made.push(take(open, { lines, moves: [move], evidence: 'payee', sure }));
  }
  return made;
}

function mayBe({ fitOf }: Open, line: ReadLine, move: NamedMove, which: 'sure' | 'offered'): boolean {
  const found = fitOf(line, move);
  if (found === null || strength(found) > EVIDENCE.indexOf('silent')) return false;
  return found.clear || which === 'offered';
}

/** Where to look: comparing all with all would take the longer the more there is. */
function nearby({ lines, moves }: Open) {
  const byPayee = groupBy(moves.values(), ({ payeeKey }) => payeeKey);
  const byDay = groupBy(moves.values(), ({ date }) => date);
  const naming = groupBy(
    [...lines.values()].flatMap((line) => [...line.payees].map((payee) => ({ line, payee }))),
    ({ payee }) => payee,
  );
  return {
    moves: (line: ReadLine): readonly NamedMove[] => {
      if (line.payees.size > 0) return [...line.payees].flatMap((payee) => byPayee.get(payee) ?? []);
      if (line.words.names.length > 0) return [];
      return DAYS.flatMap((days) => byDay.get(addDays(line.date as LocalDate, -days)) ?? []);
    },
    lines: ({ payeeKey }: NamedMove): readonly ReadLine[] =>
      payeeKey === undefined ? [] : (naming.get(payeeKey) ?? []).map(({ line }) => line),
  };
}

/** Parts of an amount are smaller than it and have its sign. */
const smaller = <One extends { readonly cents: Cents }>(
  whole: { readonly cents: Cents },
  all: readonly One[],
): readonly One[] =>
  all.filter((one) => one.cents > 0 === whole.cents > 0 && Math.abs(one.cents) < Math.abs(whole.cents));
