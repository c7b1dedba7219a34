import type { Terms } from '../../domain/accounts/terms.ts';
import { goesBack } from '../../domain/after-sale/win-money.ts';
import type { PurchaseFolder } from '../../domain/books/folder/folder.ts';
import { type PayableBill, type Payables, payables, type Settling } from '../../domain/books/payables/payables.ts';
import { FEDERAL_CALENDAR } from '../../domain/deadline/business-calendar.ts';
import { groupBy } from '../../domain/group-by.ts';
import type { LotId } from '../../domain/lot/lot.ts';
import { type Cents, cents, sumCents } from '../../domain/money/cents.ts';
import type { Setup } from '../../domain/setup/setup.ts';
import { plainWords } from '../../domain/text/plain-words.ts';
import type { LocalDate } from '../../domain/time/local-date.ts';
import type { NotedCost, NotedPayment } from '../../journal/states/books-state.ts';

/** A car's part in a bill, and what of it is still to be paid. */
export interface BillShare {
  readonly lot: LotId;
  readonly left: Cents;
}

/** What is owed to whom, with the names to show and the cars of each bill. */
export interface ShownPayables extends Payables {
  /** As the bills spell it. */
  readonly nameOf: (vendor: string) => string;
  /** The cars of a bill on which something is still to be paid. */
  readonly sharesOf: (bill: string) => readonly BillShare[];
}

/** Each vendor's terms, by what stands for him: a venue's own days to pay, and before them what is set under Payables. */
export const termsBy = ({ venues, vendors = [] }: Pick<Setup, 'venues' | 'vendors'>): ReadonlyMap<string, Terms> =>
  new Map<string, Terms>([
    ...venues.flatMap(({ name, payWithinDays }) =>
      payWithinDays === undefined ? [] : [[plainWords(name), { by: 'days' as const, days: payWithinDays }] as const],
    ),
    ...vendors.map(({ name, terms }) => [plainWords(name), terms] as const),
  ]);

/** A bill is a paper: what was recorded in one go, or on an invoice what has one number. */
const billId = ({ entry, document, key }: NotedCost): string =>
  key.includes('/') && document?.file !== undefined ? `${entry}#${document.number ?? ''}` : entry;

interface Paid {
  readonly key: string;
  readonly lot: LotId;
  readonly vendor: string;
  readonly date: LocalDate;
  readonly cents: Cents;
  readonly what: Settling['what'];
  readonly bill?: string | undefined;
}

/**
 * Payables over all folders. Money that is set against no bill settles the bills of its vendor for its car, the oldest first,
 * as the folder counts it; what is left of it then stands apart.
 */
export function payablesOf(
  folders: readonly PurchaseFolder[],
  setup: Pick<Setup, 'venues' | 'vendors'>,
  asOf: LocalDate,
): ShownPayables {
  const names = new Map<string, string>();
  const keyOf = (name: string | undefined, { facts }: PurchaseFolder): string => {
    const shown = name ?? facts.venueName ?? 'Auction';
    const key = plainWords(shown);
    if (!names.has(key)) names.set(key, shown);
    return key;
  };
  const owed = folders.flatMap((folder) =>
    (folder.costs as readonly NotedCost[])
      .filter(({ paid }) => paid === 'owed')
      .map((cost) => ({ cost, vendor: keyOf(cost.payee, folder) })),
  );
  const papers = [...groupBy(owed, ({ cost, vendor }) => `${billId(cost)} ${vendor}`).values()];
  const left = new Map<string, Map<LotId, number>>();
  const bills: PayableBill[] = [];
  const paid: Paid[] = folders.flatMap((folder) => paidOn(folder, (name) => keyOf(name, folder)));
  const disputed = new Set(folders.filter((folder) => isDisputed(folder)).map(({ lot }) => lot));
  for (const lines of papers) {
    const [first] = lines;
    if (first === undefined) continue;
    const { cost, vendor } = first;
    const whole = sumCents(lines.map((line) => line.cost.cents));
    if (whole <= 0) {
      for (const { cost: line } of lines)
        paid.push({ ...line, vendor, cents: cents(-line.cents), what: 'credit', bill: undefined });
      continue;
    }
    const id = billId(cost);
    const shares = new Map<LotId, number>();
    for (const { cost: line } of lines) shares.set(line.lot, (shares.get(line.lot) ?? 0) + line.cents);
    left.set(id, shares);
    bills.push({
      id,
      vendor,
      number: cost.document?.number,
      date: cost.date,
      due: cost.due,
      cents: whole,
      disputed: lines.some(({ cost: line }) => disputed.has(line.lot)),
    });
  }
  const oldest = bills.toSorted((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));
  const settlings = paid
    .toSorted((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0))
    .map((one): Settling => ({ ...one, id: one.key, to: setAgainst(one, oldest, left, asOf) }));
  const terms = termsBy(setup);
  return {
    ...payables({ bills, settlings, terms, calendar: FEDERAL_CALENDAR, asOf }),
    nameOf: (vendor) => names.get(vendor) ?? vendor,
    sharesOf: (bill) =>
      [...(left.get(bill) ?? [])].flatMap(([lot, rest]) => (rest > 0 ? [{ lot, left: cents(rest) }] : [])),
  };
}

/** The numbers of checks and transfers, by what stands for the vendor that they went to. */
export function paymentsBy(folders: readonly PurchaseFolder[]): ReadonlyMap<string, readonly string[]> {
  const numbers = new Map<string, string[]>();
  for (const { payments, facts } of folders)
    for (const { payee, document: paper } of payments) {
      const vendor = plainWords(payee ?? facts.venueName ?? 'Auction');
      if (paper?.number !== undefined) numbers.set(vendor, [...(numbers.get(vendor) ?? []), paper.number]);
    }
  return numbers;
}

/** Payments, what the lender paid, and what a canceled purchase takes off its bills. */
function paidOn(folder: PurchaseFolder, keyOf: (name: string | undefined) => string): Paid[] {
  const { lot, payments, floor, costs, undoneOn } = folder;
  const back = undoneOn === undefined ? [] : costs.filter(goesBack);
  return [
    ...(payments as readonly NotedPayment[]).map(({ payee, ...one }) => ({
      ...one,
      lot,
      vendor: keyOf(payee),
      what: 'payment' as const,
    })),
    ...floor.flatMap((move) =>
      move.move === 'draw' ? [{ ...move, lot, vendor: keyOf(undefined), what: 'payment' as const }] : [],
    ),
    ...(undoneOn === undefined
      ? []
      : back.map((cost) => ({
          key: `${cost.key}/back`,
          lot,
          vendor: keyOf(cost.payee),
          date: undoneOn,
          cents: cost.cents,
          what: 'credit' as const,
        }))),
  ];
}

/** The bills that money settles, and what of each car's part is left afterwards. Below zero it opens them again. */
function setAgainst(
  { lot, vendor, cents: amount, bill, date }: Paid,
  oldest: readonly PayableBill[],
  left: ReadonlyMap<string, Map<LotId, number>>,
  asOf: LocalDate,
): Settling['to'] {
  if (date > asOf) return [];
  if (bill !== undefined || amount < 0) {
    const own = bill ?? oldest.findLast((one) => one.vendor === vendor && left.get(one.id)?.has(lot))?.id;
    const shares = own === undefined ? undefined : left.get(own);
    if (own === undefined || shares === undefined) return [];
    shares.set(lot, (shares.get(lot) ?? 0) - amount);
    return [{ bill: own, cents: amount }];
  }
  let rest: number = amount;
  const to: { bill: string; cents: Cents }[] = [];
  for (const { id, vendor: whose } of oldest) {
    const shares = left.get(id);
    const open = shares?.get(lot) ?? 0;
    if (whose !== vendor || shares === undefined || open <= 0 || rest <= 0) continue;
    const part = Math.min(open, rest);
    shares.set(lot, open - part);
    to.push({ bill: id, cents: cents(part) });
    rest -= part;
  }
  return to;
}

/** Money by which a dispute may end is still open. */
const isDisputed = ({ settlements = [] }: PurchaseFolder): boolean =>
  settlements.some(({ ended }) => ended === undefined);
