import type { BookMove, MoveKind } from '../../domain/books/bank/book-move.ts';
import { type BankMatching, matchBank } from '../../domain/books/bank/match-bank.ts';
import type { PurchaseFolder } from '../../domain/books/folder/folder.ts';
import { groupBy } from '../../domain/group-by.ts';
import type { LotId } from '../../domain/lot/lot.ts';
import { type Cents, cents, sumCents } from '../../domain/money/cents.ts';
import { addDays } from '../../domain/time/calendar-day.ts';
import type { LocalDate } from '../../domain/time/local-date.ts';
import type { BankState, LeftOut, NotedBankLine, NotedMatch } from '../../journal/states/bank-state.ts';

/** Money of one car at the bank, as it was recorded. */
interface Part {
  readonly key: string;
  readonly paper: string;
  readonly lot: LotId;
  readonly what: MoveKind;
  readonly date: LocalDate;
  readonly cents: Cents;
  readonly payee?: string | undefined;
  readonly number?: string | undefined;
}

/** A recorded move with the cars that it was for. */
export interface CarMove extends BookMove {
  readonly lots: readonly LotId[];
}

/** A match that stands, with what the bank has less what the books have. */
export interface ShownMatch {
  readonly match: NotedMatch;
  readonly lines: readonly NotedBankLine[];
  readonly moves: readonly Part[];
  readonly difference: Cents;
}

/** The bank beside the books. */
export interface BankView extends BankMatching {
  readonly matched: readonly ShownMatch[];
  readonly leftOut: readonly { readonly line: NotedBankLine; readonly note: LeftOut }[];
  /** Recorded moves after the last day of the statements, which no statement can have yet. */
  readonly later: readonly BookMove[];
  /** How many recorded moves are from long before the first statement, as was the bank’s line. */
  readonly earlier: number;
  readonly carsOf: (move: string) => readonly LotId[];
}

/** Days before the first statement from which something recorded is likely to be on it. */
const LATELY = 10;

/** What was recorded as money at the bank: payments, refunds, bills paid at once, payoffs and sales. */
function partsOf(folders: readonly PurchaseFolder[]): Part[] {
  return folders.flatMap(({ lot, payments, costs, floor, outcome, stage }) => [
    ...payments.map(
      ({ key, cents: amount, date, payee, document }): Part => ({
        ...{ key, lot, date, payee, number: document?.number },
        paper: key.startsWith('noted/') ? key : `${key.split('/')[0]}`,
        what: amount < 0 ? 'refund' : 'payment',
        cents: cents(-amount),
      }),
    ),
    ...costs
      .filter(({ paid }) => paid === 'bank')
      .map(
        ({ key, cents: amount, date, payee, document }): Part => ({
          ...{ key, lot, date, payee, number: document?.number },
          paper: `${key.split('/')[0]}`,
          what: 'cost',
          cents: cents(-amount),
        }),
      ),
    ...floor
      .filter(({ move }) => move === 'payoff')
      .map(
        ({ key, cents: amount, date, document }): Part => ({
          ...{ key, lot, date, number: document?.number },
          paper: key,
          what: 'payoff',
          cents: cents(-amount),
        }),
      ),
    ...(outcome === undefined || stage !== 'sold' || outcome.priceCents === 0
      ? []
      : [
          {
            key: `${lot}/sold`,
            paper: `${lot}/sold`,
            lot,
            what: 'sale' as const,
            date: outcome.date,
            cents: outcome.priceCents as Cents,
          },
        ]),
  ]);
}

/** What was recorded in one go with one payee, day and number is one check or transfer, however many cars it was for. */
function movesOf(parts: readonly Part[]): CarMove[] {
  const groups = groupBy(parts, ({ paper, payee, number, date }) => [paper, payee, number, date].join('|'));
  return [...groups.values()].flatMap((group): CarMove[] => {
    const [first] = group;
    const amount = sumCents(group.map((part) => part.cents));
    if (first === undefined || amount === 0) return [];
    const keys = group.map(({ key }) => key);
    return [
      {
        ...first,
        what: amount > 0 && first.what === 'payment' ? 'refund' : first.what,
        keys,
        cents: amount,
        lots: [...new Set(group.map(({ lot }) => lot))],
      },
    ];
  });
}

/** A payment that came back has the number of the payment that went out before it. */
function withReturns(moves: readonly CarMove[]): CarMove[] {
  const key = ({ payee, number, cents: amount }: BookMove) => `${payee}|${number}|${Math.abs(amount)}`;
  const out = groupBy(
    moves.filter(({ cents: amount, number }) => amount < 0 && number !== undefined),
    key,
  );
  return moves.map((move) => {
    const before = move.what === 'refund' && (out.get(key(move)) ?? []).some(({ date }) => date <= move.date);
    return before ? { ...move, what: 'returned' } : move;
  });
}

/**
 * The bank beside the books: what is matched, what seems to belong together, and what either has alone. A match whose
 * recorded money was undone since no longer stands, and its line is open again.
 */
export function bankView(bank: BankState, folders: readonly PurchaseFolder[]): BankView {
  const parts = partsOf(folders);
  const known = new Map(parts.map((part) => [part.key, part]));
  const matches = standing(bank, known);
  const matched = matches.map((match): ShownMatch => {
    const lines = match.lines.flatMap((key) => bank.lines.get(key) ?? []);
    const moves = match.booked.flatMap((key) => known.get(key) ?? []);
    const difference = cents(sumCents(lines.map((line) => line.cents)) - sumCents(moves.map((move) => move.cents)));
    return { match, lines, moves, difference };
  });
  const done = new Set(matches.flatMap(({ lines }) => lines));
  const cleared = new Set(matches.flatMap(({ booked }) => booked));
  const open = [...bank.lines.values()].filter(({ key }) => !done.has(key) && !bank.leftOut.has(key));
  const moves = withReturns(movesOf(parts.filter(({ key }) => !cleared.has(key))));
  const { first, last } = span(bank);
  // What was recorded long before the first statement was on an earlier one.
  const due = moves.filter(({ date }) => date >= addDays(first, -60) && date <= addDays(last, 10));
  const matching = matchBank(open, due);
  const carsOf = new Map(moves.map(({ key, lots }) => [key, lots]));
  return {
    ...matching,
    moves: matching.moves.filter(({ date }) => date >= addDays(first, -LATELY) && date <= last),
    earlier: moves.filter(({ date }) => date < addDays(first, -LATELY)).length,
    later: moves.filter(({ date }) => date > last),
    matched,
    leftOut: [...bank.leftOut].flatMap(([key, note]) => {
      const line = bank.lines.get(key);
      return line === undefined ? [] : [{ line, note }];
    }),
    carsOf: (move) => carsOf.get(move) ?? [],
  };
}

const standing = ({ byLine }: BankState, known: ReadonlyMap<string, unknown>): NotedMatch[] =>
  [...new Set(byLine.values())].filter(({ booked }) => booked.every((key) => known.has(key)));

/** Keys of the recorded lines that are matched with the bank. */
export function clearedIn(bank: BankState, folders: readonly PurchaseFolder[]): ReadonlySet<string> {
  const known = new Map(partsOf(folders).map((part) => [part.key, part]));
  return new Set(standing(bank, known).flatMap(({ booked }) => booked));
}

function span({ statements }: BankState): { readonly first: LocalDate; readonly last: LocalDate } {
  const [from, to] = [
    statements.map((one) => one.from).sort()[0],
    statements
      .map((one) => one.to)
      .sort()
      .at(-1),
  ];
  return { first: from ?? ('2900-01-01' as LocalDate), last: to ?? ('1900-01-01' as LocalDate) };
}
