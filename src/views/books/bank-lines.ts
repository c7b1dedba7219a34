import type { BankState } from '../../journal/states/bank-state.ts';

/** Lines at the bank that nothing says anything about yet. */
export const openBankLines = ({ lines, byLine, leftOut }: BankState): number =>
  [...lines.keys()].filter((key) => !byLine.has(key) && !leftOut.has(key)).length;
