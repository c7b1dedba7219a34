import type { BankLine } from '../../domain/books/bank/bank-line.ts';
import type { BankState } from '../../journal/states/bank-state.ts';

/** The lines at the bank that nothing says anything about yet. */
export const openLinesOf = ({ lines, byLine, leftOut }: BankState): BankLine[] =>
  [...lines.values()].filter(({ key }) => !byLine.has(key) && !leftOut.has(key));

/** How many those are. */
export const openBankLines = (bank: BankState): number => openLinesOf(bank).length;
