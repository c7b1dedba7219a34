import { type Cents, cents } from '../../domain/money/cents.ts';
import { parseMoney } from '../../domain/money/parse-money.ts';
import type { DecimalMark } from '../../domain/money/written-number.ts';
import { type Outcome, ok } from '../../domain/outcome.ts';
import { unguardCell } from '../csv/guard-cell.ts';

/** Credit or debit behind or before a figure. On a bank statement a credit is money in. */
const BEHIND = /^(.*\d\)?)\s*(cr|dr)\.?$/i;
const BEFORE = /^(cr|dr)\.?\s*(\(?[$\d].*)$/i;
const SIGN_OUTSIDE = /^([-+]?)\$\s*(\(.*\)|[-+].*)$/;

export interface BankAmount {
  readonly cents: Cents;
  /** Whether a sign, parentheses, CR or DR say which way it went; a plain figure says nothing. */
  readonly signed: boolean;
}

/** An amount as a bank writes it: "450.00 DR", "(450.00)" and "450.00-" are money out. */
export function readBankAmount(cell: string, decimal?: DecimalMark): Outcome<BankAmount> {
  const text = unguardCell(cell.trim());
  const marked = BEHIND.exec(text);
  const before = marked === null ? BEFORE.exec(text) : null;
  const mark = (marked?.[2] ?? before?.[1])?.toLowerCase();
  const figure = (marked?.[1] ?? before?.[2] ?? text).trim();
  const plain = figure
    .replace(SIGN_OUTSIDE, '$1$2')
    .replace(/^([-+])\s+/, '$1')
    .replace(/\s+([-+])$/, '$1');
  const amount = parseMoney(plain, decimal === undefined ? {} : { decimal });
  if (!amount.ok) return amount;
  if (mark !== undefined)
    return ok({ cents: cents(mark === 'cr' ? Math.abs(amount.value) : -Math.abs(amount.value)), signed: true });
  return ok({ cents: amount.value, signed: amount.value < 0 || /^\+|\+$/.test(plain) });
}
