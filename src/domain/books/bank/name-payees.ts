import { groupBy } from '../../group-by.ts';
import type { BankLine } from './bank-line.ts';
import type { BookMove } from './book-move.ts';
import { type LineWords, lineWords, namesIn } from './line-words.ts';

/** A line of the bank with what it says. */
export interface ReadLine extends BankLine {
  readonly words: LineWords;
  /** The recorded payees that it names. */
  readonly payees: ReadonlySet<string>;
}

/** A move with what stands for its payee; undefined where nothing tells it from others. */
export interface NamedMove extends BookMove {
  readonly payeeKey: string | undefined;
}

/** Banks cut names short. */
const LEAST_LETTERS = 4;
const sameWord = (a: string, b: string): boolean =>
  a === b || (Math.min(a.length, b.length) >= LEAST_LETTERS && (a.startsWith(b) || b.startsWith(a)));
const beginning = (word: string): string => word.slice(0, LEAST_LETTERS);

/** Finds which recorded payees each line names. A word that two payees share tells neither. */
export function namePayees(
  lines: readonly BankLine[],
  moves: readonly BookMove[],
): { readonly lines: readonly ReadLine[]; readonly moves: readonly NamedMove[] } {
  const payees = new Map<string, string>();
  const words: { readonly word: string; readonly payee: string }[] = [];
  for (const { payee } of moves) {
    if (payee === undefined || payees.has(payee)) continue;
    const names = [...new Set(namesIn(payee))];
    const key = names.join(' ');
    if (key !== '' && ![...payees.values()].includes(key)) words.push(...names.map((word) => ({ word, payee: key })));
    payees.set(payee, key);
  }
  const owners = groupBy(words, ({ word }) => word);
  const telling = words.filter(({ word }) => owners.get(word)?.length === 1);
  const byBeginning = groupBy(telling, ({ word }) => beginning(word));
  const told = new Set(telling.map(({ payee }) => payee));
  const payeesIn = (names: readonly string[]): ReadonlySet<string> =>
    new Set(
      names.flatMap((name) =>
        (byBeginning.get(beginning(name)) ?? []).flatMap(({ word, payee }) => (sameWord(word, name) ? [payee] : [])),
      ),
    );
  return {
    lines: lines.map((line) => {
      const said = lineWords(line);
      return { ...line, words: said, payees: payeesIn(said.names) };
    }),
    moves: moves.map((move) => {
      const key = payees.get(move.payee ?? '');
      return { ...move, payeeKey: key !== undefined && told.has(key) ? key : undefined };
    }),
  };
}
