import type { AccountNames } from '../../domain/accounts/accounts.ts';
import type { BookedDocument } from '../../domain/books/booking.ts';
import type { ComparedLine } from '../../domain/books/folder/compare-lines.ts';
import type { PurchaseFolder } from '../../domain/books/folder/folder.ts';
import type { OpenBill } from '../../domain/books/payables/payables.ts';
import type { Posting, Transaction } from '../../domain/books/post/transaction.ts';
import { carName } from '../../domain/lot/car-name.ts';
import type { LotFacts } from '../../domain/lot/lot.ts';
import type { CsvCell } from '../csv/csv-row.ts';

/** A column of a file that goes out: its heading, what it means, and how a row fills it. */
export interface OutColumn<Row> {
  readonly heading: string;
  readonly means: string;
  readonly cell: (row: Row) => CsvCell | undefined;
}

export const text = (value: string | undefined | null): CsvCell | undefined =>
  value === undefined || value === null || value === '' ? undefined : { text: value, kind: 'text' };
/** Written year first, which every spreadsheet takes for the same day. */
export const date = (value: string | undefined | null): CsvCell | undefined =>
  value === undefined || value === null ? undefined : { text: value, kind: 'date' };
export const money = (value: number | undefined | null): CsvCell | undefined =>
  value === undefined || value === null ? undefined : { text: (value / 100).toFixed(2), kind: 'number' };

const unique = (words: readonly (string | undefined)[]): string =>
  [...new Set(words.flatMap((word) => word ?? []))].join('; ');
export const numbersOf = (papers: readonly { readonly document?: BookedDocument | undefined }[]): string =>
  unique(papers.map(({ document }) => document?.number));

export const carColumns = <Row>(factsOf: (row: Row) => LotFacts | undefined): readonly OutColumn<Row>[] => [
  { heading: 'VIN', means: 'As shown on the lot.', cell: (row) => text(factsOf(row)?.vin) },
  { heading: 'Lot number', means: 'As the venue prints it.', cell: (row) => text(factsOf(row)?.lotNumber) },
  { heading: 'Car', means: 'Year, make, model and trim.', cell: (row) => text(carName(factsOf(row) ?? {})) },
  { heading: 'Venue', means: 'Where it was bought.', cell: (row) => text(factsOf(row)?.venueName) },
];

/** Says in every row which zone its days are in, so that a row that was copied elsewhere still does. */
export const zoneColumn = (zone: string): OutColumn<unknown> => ({
  heading: 'Zone',
  means: 'Zone of the days in the row: the store’s own.',
  cell: () => text(zone),
});

/** One row a car. */
export const FOLDER_COLUMNS: readonly OutColumn<PurchaseFolder>[] = [
  ...carColumns<PurchaseFolder>(({ facts }) => facts),
  {
    heading: 'Won on',
    means: 'Day of the win in the store’s zone, year-month-day.',
    cell: ({ won }) => date(won?.date),
  },
  { heading: 'Bought by', means: 'Who bid, where that was entered.', cell: ({ won }) => text(won?.bidder) },
  {
    heading: 'Status',
    means: 'in-stock, sold, canceled or not-won.',
    cell: ({ stage }) => text(stage === 'undone' ? 'canceled' : stage),
  },
  { heading: 'Hammer', means: 'Hammer price by the result, dollars.', cell: ({ won }) => money(won?.hammer) },
  {
    heading: 'Expected cost',
    means: 'All lines that a bill was expected for at the win, dollars.',
    cell: ({ expectedCents }) => money(expectedCents),
  },
  {
    heading: 'Actual cost',
    means: 'All bills recorded so far, less credits, dollars.',
    cell: ({ actualCents }) => money(actualCents),
  },
  {
    heading: 'Still owed',
    means:
      'Bills not paid yet, plus the price and fees not billed yet, dollars; negative when overpaid or a refund is due.',
    cell: ({ open }) => money(open),
  },
  {
    heading: 'Floor plan',
    means: 'Principal still owed to the lender, dollars.',
    cell: ({ floorOwed }) => money(floorOwed),
  },
  { heading: 'Sold on', means: 'Sale date, year-month-day.', cell: ({ outcome }) => date(outcome?.date) },
  { heading: 'Sold to', means: 'retail, business or wholesale.', cell: ({ outcome }) => text(outcome?.buyer) },
  { heading: 'Sold for', means: 'Price, dollars.', cell: ({ outcome }) => money(outcome?.priceCents) },
  {
    heading: 'Expected gross',
    means: 'Expected retail less expected cost, dollars.',
    cell: ({ expected }) => money(expected?.gross),
  },
  { heading: 'Gross', means: 'Price less actual cost, dollars.', cell: ({ gross }) => money(gross) },
  {
    heading: 'Bill numbers',
    means: 'Numbers of all its bills and invoices, as printed.',
    cell: ({ costs }) => text(numbersOf(costs)),
  },
  {
    heading: 'Payment numbers',
    means: 'Numbers of checks and transfers, also to and from the lender.',
    cell: ({ payments, floor }) => text(numbersOf([...payments, ...floor])),
  },
  {
    heading: 'Missing',
    means: 'What is still missing from the folder.',
    cell: ({ missing }) => text(missing.join('; ')),
  },
];

export interface FolderLineRow {
  readonly folder: PurchaseFolder;
  readonly line: ComparedLine;
}

/** One row a line of a folder. */
export const LINE_COLUMNS: readonly OutColumn<FolderLineRow>[] = [
  ...carColumns<FolderLineRow>(({ folder }) => folder.facts),
  {
    heading: 'Kind',
    means: 'hammer, fee, transport, recon, interest, floor-fee, sales-tax or other.',
    cell: ({ line }) => text(line.cost),
  },
  { heading: 'Line', means: 'As expected, or the bill’s description.', cell: ({ line }) => text(line.label) },
  { heading: 'Expected', means: 'At the win, dollars.', cell: ({ line }) => money(line.expected?.cents) },
  {
    heading: 'Actual',
    means: 'All bills for it, dollars; empty while there is none.',
    cell: ({ line }) => money(line.actualCents),
  },
  { heading: 'Difference', means: 'Actual less expected, dollars.', cell: ({ line }) => money(line.difference) },
  { heading: 'Why', means: 'What explains the difference.', cell: ({ line }) => text(line.why) },
  {
    heading: 'Bill numbers',
    means: 'Numbers of the bills for it, as printed.',
    cell: ({ folder, line }) =>
      text(numbersOf(folder.costs.filter(({ key }) => line.actual.some((one) => one.key === key)))),
  },
  {
    heading: 'Vendors',
    means: 'Who sent those bills.',
    cell: ({ folder, line }) =>
      text(
        unique(folder.costs.filter(({ key }) => line.actual.some((one) => one.key === key)).map(({ payee }) => payee)),
      ),
  },
];

export interface PayableRow {
  readonly bill: OpenBill;
  /** As the bills spell it. */
  readonly vendor: string;
}

/** One row a bill on which something is still to be paid. */
export const PAYABLE_COLUMNS: readonly OutColumn<PayableRow>[] = [
  { heading: 'Vendor', means: 'Who sent the bill.', cell: ({ vendor }) => text(vendor) },
  { heading: 'Bill number', means: 'As printed.', cell: ({ bill }) => text(bill.number) },
  { heading: 'Bill date', means: 'Year-month-day.', cell: ({ bill }) => date(bill.date) },
  { heading: 'Due on', means: 'Its own due date, else by the vendor’s terms.', cell: ({ bill }) => date(bill.dueOn) },
  { heading: 'Amount', means: 'Of the whole bill, dollars.', cell: ({ bill }) => money(bill.cents) },
  { heading: 'Still owed', means: 'What is left of it, dollars.', cell: ({ bill }) => money(bill.open) },
  {
    heading: 'Days past due',
    means: 'Below zero while it is not due yet.',
    cell: ({ bill }) => ({ text: String(bill.daysPastDue), kind: 'number' }),
  },
  {
    heading: 'Age',
    means: 'By days past due: current, 1-30, 31-60, 61-90 or over 90.',
    cell: ({ bill }) => text(bill.bucket),
  },
  { heading: 'Remarks', means: 'What to know before it is paid.', cell: ({ bill }) => text(bill.remarks.join(' ')) },
];

export interface PostingRow {
  readonly transaction: Transaction;
  readonly posting: Posting;
  readonly facts: LotFacts | undefined;
  readonly accounts: AccountNames;
}

/** One row a posting. */
export const POSTING_COLUMNS: readonly OutColumn<PostingRow>[] = [
  {
    heading: 'Date',
    means: 'Day it counts, in the store’s zone, year-month-day.',
    cell: ({ transaction }) => date(transaction.date),
  },
  {
    heading: 'Transaction',
    means: 'Same for all rows that belong together.',
    cell: ({ transaction }) => text(transaction.key),
  },
  {
    heading: 'Account',
    means: 'By its name in Setup.',
    cell: ({ posting, accounts }) => text(accounts[posting.account]),
  },
  {
    heading: 'Debit',
    means: 'Dollars; empty for a credit.',
    cell: ({ posting }) => (posting.cents > 0 ? money(posting.cents) : undefined),
  },
  {
    heading: 'Credit',
    means: 'Dollars; empty for a debit.',
    cell: ({ posting }) => (posting.cents < 0 ? money(-posting.cents) : undefined),
  },
  { heading: 'Text', means: 'What happened.', cell: ({ transaction }) => text(transaction.text) },
  { heading: 'Vendor', means: 'Who sent the bill or was paid.', cell: ({ transaction }) => text(transaction.payee) },
  {
    heading: 'Number',
    means: 'Of the bill, invoice, check or transfer.',
    cell: ({ transaction }) => text(transaction.number),
  },
  {
    heading: 'Corrects',
    means: 'The closed month where it would have belonged, year-month.',
    cell: ({ transaction }) => text(transaction.corrects),
  },
  ...carColumns<PostingRow>(({ facts }) => facts),
];
