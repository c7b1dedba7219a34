import { dueOn, type Terms } from '../../accounts/terms.ts';
import type { BusinessCalendar } from '../../deadline/business-calendar.ts';
import { type Cents, cents, sumCents } from '../../money/cents.ts';
import { daysBetween } from '../../time/calendar-day.ts';
import type { LocalDate } from '../../time/local-date.ts';
import { type Ageing, ageingOf, type Bucket, bucketOf } from './ageing.ts';
import { billRemarks, vendorRemarks } from './remarks.ts';

/** A bill that is owed until it is paid: one paper of one vendor, however many cars it is for. */
export interface PayableBill {
  readonly id: string;
  /** Stands for the vendor; two spellings of one name have the same. */
  readonly vendor: string;
  readonly number?: string | undefined;
  readonly date: LocalDate;
  /** Its own due date, which goes before the vendor's terms. */
  readonly due?: LocalDate | undefined;
  /** Above zero. */
  readonly cents: Cents;
  readonly disputed?: boolean | undefined;
}

/** Money or a credit for a vendor, and the bills that it was set against. One that came back is below zero. */
export interface Settling {
  readonly id: string;
  readonly vendor: string;
  readonly date: LocalDate;
  readonly cents: Cents;
  readonly what: 'payment' | 'credit';
  readonly to: readonly { readonly bill: string; readonly cents: Cents }[];
}

export interface PayablesInput {
  readonly bills: readonly PayableBill[];
  readonly settlings: readonly Settling[];
  /** By the vendor. */
  readonly terms: ReadonlyMap<string, Terms>;
  readonly calendar: BusinessCalendar;
  /** What is dated later does not count. */
  readonly asOf: LocalDate;
}

export interface OpenBill extends PayableBill {
  readonly dueOn: LocalDate;
  /** What is still to be paid; never below zero. */
  readonly open: Cents;
  /** Below zero while it is not due yet. */
  readonly daysPastDue: number;
  readonly bucket: Bucket;
  /** What is to be known before it is paid, in sentences. */
  readonly remarks: readonly string[];
}

export interface VendorPayables {
  readonly vendor: string;
  readonly bills: readonly OpenBill[];
  readonly owed: Cents;
  /** Payments and credits that are set against no bill, or are over its open sum: shown apart, in no bucket. */
  readonly unapplied: Cents;
  readonly net: Cents;
  readonly ageing: Ageing;
  readonly remarks: readonly string[];
}

export interface Payables {
  /** By their names in code order. */
  readonly vendors: readonly VendorPayables[];
  readonly ageing: Ageing;
  readonly owed: Cents;
  readonly unapplied: Cents;
  readonly net: Cents;
  /** What is open, by due date, then by its id. */
  readonly inOrder: readonly OpenBill[];
}

/** What is owed to whom and since when, over all cars. */
export function payables({ bills, settlings, terms, calendar, asOf }: PayablesInput): Payables {
  const known = bills.filter(({ date }) => date <= asOf);
  const counted = settlings.filter(({ date }) => date <= asOf).toSorted((a, b) => compare(a.date, b.date));
  const left = new Map(known.map((bill) => [bill.id, bill.cents as number]));
  const loose = new Map<string, number>();
  const keep = (vendor: string, amount: number) => loose.set(vendor, (loose.get(vendor) ?? 0) + amount);
  for (const { vendor, cents: amount, to } of counted) {
    let rest: number = amount;
    for (const { bill, cents: part } of to) {
      const open = left.get(bill);
      const whole = known.find(({ id }) => id === bill)?.cents ?? 0;
      if (open === undefined) continue;
      // What is paid over the open sum stays with the vendor; what comes back opens the bill again, at most to the whole of it.
      const used = part >= 0 ? Math.min(part, open) : Math.max(part, open - whole);
      left.set(bill, open - used);
      rest -= used;
    }
    keep(vendor, rest);
  }
  const open = known.map((bill): OpenBill => {
    const his = terms.get(bill.vendor);
    const due = bill.due ?? (his === undefined ? bill.date : dueOn(bill.date, his, calendar));
    const daysPastDue = daysBetween(due, asOf);
    const rest = cents(left.get(bill.id) ?? 0);
    const against = counted.filter(({ to }) => to.some((one) => one.bill === bill.id));
    return {
      ...bill,
      dueOn: due,
      open: rest,
      daysPastDue,
      bucket: bucketOf(daysPastDue),
      remarks: billRemarks({ bill, open: rest, against, terms: his, all: known }),
    };
  });
  const names = [...new Set([...known.map(({ vendor }) => vendor), ...counted.map(({ vendor }) => vendor)])].sort();
  const vendors = names.map((vendor): VendorPayables => {
    const own = open.filter((bill) => bill.vendor === vendor);
    const owed = sumCents(own.map((bill) => bill.open));
    const unapplied = cents(loose.get(vendor) ?? 0);
    return {
      vendor,
      bills: own,
      owed,
      unapplied,
      net: cents(owed - unapplied),
      ageing: ageingOf(own),
      remarks: vendorRemarks({ owed, unapplied, hasTerms: terms.has(vendor), bills: own }),
    };
  });
  const owed = sumCents(vendors.map((vendor) => vendor.owed));
  const unapplied = sumCents(vendors.map((vendor) => vendor.unapplied));
  return {
    vendors,
    ageing: ageingOf(open),
    owed,
    unapplied,
    net: cents(owed - unapplied),
    inOrder: open.filter((bill) => bill.open > 0).sort((a, b) => compare(a.dueOn, b.dueOn) || compare(a.id, b.id)),
  };
}

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
