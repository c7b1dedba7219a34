import type { BankLine } from '../../domain/books/bank/bank-line.ts';
import type { Cents } from '../../domain/money/cents.ts';
import type { LocalDate } from '../../domain/time/local-date.ts';

/** A row that could not be read, or that says what is no line. */
export interface StatementRow {
  /** Counted from 1 as a spreadsheet does; of an OFX file the how manyth transaction it is. */
  readonly row: number;
  readonly message: string;
}

/** A statement as it was read, before anything of it is kept. */
export interface StatementRead {
  /** The end of the account's number, as "…4711"; empty where the file does not say. */
  readonly account: string;
  readonly from?: LocalDate | undefined;
  readonly to?: LocalDate | undefined;
  readonly opening?: Cents | undefined;
  readonly closing?: Cents | undefined;
  /** The earliest first; on one day in the order of the file. */
  readonly lines: readonly BankLine[];
  /** Earlier lines that no longer count and that nothing stands for. */
  readonly dropped: readonly string[];
  /** Rows that could not be read: nothing of them is kept. */
  readonly faults: readonly StatementRow[];
  /** Rows that hold no line of the account, and what was done with them. */
  readonly notes: readonly StatementRow[];
  /** What the statement's own balances say, in a sentence; undefined where it has none. */
  readonly balance?: BalanceCheck | undefined;
}

export interface BalanceCheck {
  /** Whether opening balance and lines come to the closing balance, and each running balance to the next. */
  readonly ties: boolean;
  readonly message: string;
}

/** What a line is told apart by where the bank gives it no id: its day, amount and words, and the how manyth of them it is. */
export function withKeys(
  account: string,
  lines: readonly (Omit<BankLine, 'key'> & { readonly id?: string | undefined })[],
): BankLine[] {
  const seen = new Map<string, number>();
  return lines.map(({ id, ...line }) => {
    const own =
      id ??
      `${line.date}|${line.cents}|${line.check ?? ''}|${line.text.toLowerCase().replace(/\s+/g, ' ').slice(0, 80)}`;
    const times = (seen.get(own) ?? 0) + 1;
    seen.set(own, times);
    return { ...line, key: keyOf(account, times === 1 ? own : `${own}#${times}`) };
  });
}

export const keyOf = (account: string, own: string): string => `${account.slice(0, 40)}|${own}`.slice(0, 200);
