import type { Cents } from '../../money/cents.ts';
import type { LocalDate } from '../../time/local-date.ts';

/** What money moved for. A returned payment is one of ours that came back unpaid; a refund is money that they sent. */
export type MoveKind = 'payment' | 'refund' | 'returned' | 'cost' | 'payoff' | 'sale';

/** Money that moved at the bank as the books have it: one check, one transfer, however many cars it was for. */
export interface BookMove {
  /** The key of its first recorded line. */
  readonly key: string;
  /** Of all its recorded lines. */
  readonly keys: readonly string[];
  readonly what: MoveKind;
  readonly date: LocalDate;
  /** Below zero: money out. Never zero. */
  readonly cents: Cents;
  readonly payee?: string | undefined;
  /** Of the check or the transfer. */
  readonly number?: string | undefined;
}
