import type { LotId } from '../../domain/lot/lot.ts';
import { type Cents, cents } from '../../domain/money/cents.ts';
import { splitByLargestRemainder } from '../../domain/money/split-by-largest-remainder.ts';
import type { BillShare } from './payables-of.ts';

/** One line of a payment: what of it goes to which car of which bill. */
export interface BillPaymentLine {
  readonly lot: LotId;
  readonly cents: Cents;
  readonly bill: string;
}

/**
 * What is paid on a bill, shared among its cars by what each still owes, to the cent.
 * @param amount above zero, and at most what is open on the bill
 */
export function billPayment(bill: string, amount: Cents, shares: readonly BillShare[]): BillPaymentLine[] {
  const parts = splitByLargestRemainder(
    amount,
    shares.map(({ left }) => left),
  );
  return shares.flatMap(({ lot }, i) => {
    const part = parts[i] ?? 0;
    return part === 0 ? [] : [{ lot, cents: cents(part), bill }];
  });
}
