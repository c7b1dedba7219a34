import type { BankLine, BankMatch } from '../../domain/books/bank/bank-line.ts';
import type { Cents } from '../../domain/money/cents.ts';
import type { LocalDate } from '../../domain/time/local-date.ts';
import type { Noted } from './noted.ts';

export interface NotedStatement extends Noted {
  readonly account: string;
  readonly file?: string | undefined;
  readonly from: LocalDate;
  readonly to: LocalDate;
  readonly opening?: Cents | undefined;
  readonly closing?: Cents | undefined;
  /** How many lines it has, and how many of them no earlier one had. */
  readonly lines: number;
  readonly fresh: number;
}

export type NotedBankLine = BankLine & Noted & { readonly account: string };
export type NotedMatch = BankMatch & Noted;

export interface LeftOut extends Noted {
  readonly why: string;
}

/** What the bank says, as the journal leaves it. */
export interface BankState {
  readonly statements: readonly NotedStatement[];
  /** By their keys; lines that the bank took back are not here. */
  readonly lines: ReadonlyMap<string, NotedBankLine>;
  /** The match of each line, and of each recorded line. What was recorded may have been undone since. */
  readonly byLine: ReadonlyMap<string, NotedMatch>;
  readonly byBooked: ReadonlyMap<string, NotedMatch>;
  readonly leftOut: ReadonlyMap<string, LeftOut>;
}

/** The same while it is folded. */
export interface BankDraft {
  readonly statements: NotedStatement[];
  readonly lines: Map<string, NotedBankLine>;
  readonly byLine: Map<string, NotedMatch>;
  readonly byBooked: Map<string, NotedMatch>;
  readonly leftOut: Map<string, LeftOut>;
  /** Keys of lines that the bank took back. */
  readonly gone: Set<string>;
}

export const emptyBank = (): BankDraft => ({
  statements: [],
  lines: new Map(),
  byLine: new Map(),
  byBooked: new Map(),
  leftOut: new Map(),
  gone: new Set(),
});
