import { discountUntil, type Terms } from '../../accounts/terms.ts';
import { type Cents, cents, sumCents } from '../../money/cents.ts';
import { formatMoney } from '../../money/format-money.ts';
import { sayDate } from '../../time/say-time.ts';
import type { OpenBill, PayableBill, Settling } from './payables.ts';

interface BillSeen {
  readonly bill: PayableBill;
  readonly open: Cents;
  /** What was set against it. */
  readonly against: readonly Settling[];
  readonly terms: Terms | undefined;
  readonly all: readonly PayableBill[];
}

/** What is to be known of a bill before it is paid. */
export function billRemarks({ bill, open, against, terms, all }: BillSeen): readonly string[] {
  const until = discountUntil(bill.date, terms);
  const off = terms?.by === 'days' ? (terms.discount?.basisPoints ?? 0) : 0;
  const late = until !== null && against.some(({ what, date }) => what === 'payment' && date > until);
  // Half a cent either way, as the vendor may round.
  const isDiscount = open > 0 && Math.abs(open - (bill.cents * off) / 10_000) <= 1;
  const twice = all.filter(
    (one) =>
      one.id !== bill.id &&
      one.vendor === bill.vendor &&
      bill.number !== undefined &&
      one.number === bill.number &&
      one.cents === bill.cents,
  );
  return [
    bill.disputed === true && open > 0 && 'In dispute: owed until it is settled.',
    twice.length > 0 && `Bill number ${bill.number} is recorded ${twice.length + 1} times with this amount.`,
    against.some(({ what, cents: amount }) => what === 'payment' && amount < 0) &&
      open > 0 &&
      'A payment was returned.',
    late && isDiscount && `${formatMoney(open)} short: the discount ended on ${sayDate(until)}.`,
    until !== null &&
      open === bill.cents &&
      `Discount of ${formatMoney(cents(Math.round((bill.cents * off) / 10_000)))} until ${sayDate(until)}.`,
  ].filter((words) => words !== false);
}

interface VendorSeen {
  readonly owed: Cents;
  readonly unapplied: Cents;
  readonly hasTerms: boolean;
  readonly bills: readonly OpenBill[];
}

/** What is to be known of a vendor. */
export function vendorRemarks({ owed, unapplied, hasTerms, bills }: VendorSeen): readonly string[] {
  const withoutDue = bills.filter(({ due, open }) => due === undefined && open > 0);
  const paidOff = sumCents(bills.map(({ cents: whole }) => whole)) > 0 && owed === 0;
  return [
    !hasTerms && withoutDue.length > 0 && 'No terms yet: bills count as due on their own day.',
    unapplied > 0 &&
      (paidOff
        ? `${formatMoney(unapplied)} paid too much, a refund is due, or its bill is not recorded yet.`
        : `${formatMoney(unapplied)} not set against a bill.`),
  ].filter((words) => words !== false);
}
