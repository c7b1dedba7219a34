import type { AccountNames } from '../../accounts/accounts.ts';
import type { LotId } from '../../lot/lot.ts';
import type { Transaction } from '../post/transaction.ts';

/** What the journal says of a car beside its amounts. */
export interface JournalCar {
  readonly vin?: string | undefined;
  readonly lotNumber?: string | undefined;
}

export interface JournalHead {
  /** For the comment on top: whose books, and which days. */
  readonly title: string;
  readonly zone: string;
  /** Keys of what is matched with the bank; undefined where no statement was read, and then all counts as cleared. */
  readonly cleared?: ReadonlySet<string> | undefined;
}

/**
 * Transactions as a plain-text double-entry journal in the syntax that ledger and hledger share: account and commodity
 * directives first, then one paragraph a transaction, debits before credits, the number of the bill or check as its code, and VIN, lot number, vendor and number as tags. Dates are
 * calendar dates of the store. Credits are negative. Once a bank statement was read, money at the bank has the mark `*` only where it is
 * matched.
 */
export function* plainTextJournal(
  transactions: readonly Transaction[],
  accounts: AccountNames,
  cars: ReadonlyMap<LotId, JournalCar>,
  head: JournalHead,
): Generator<string> {
  yield `; ${inLine(head.title)}\n`;
  yield `; US dollars; days in the store's own zone, ${inLine(head.zone)}\n\n`;
  // In two lines, which both programs take; one of them knows no other way.
  yield 'commodity $\n    format $1,000.00\n\n';
  for (const tag of ['vin', 'lot', 'vendor', 'number', 'corrects']) yield `tag ${tag}\n`;
  yield '\n';
  for (const name of new Set(Object.values(accounts))) yield `account ${name}\n`;
  for (const transaction of transactions)
    yield `\n${paragraph(transaction, accounts, cars.get(transaction.lot), isCleared(transaction, head))}`;
}

/** What does not touch the bank has nothing to wait for. */
const isCleared = ({ key, postings }: Transaction, { cleared }: JournalHead): boolean =>
  cleared === undefined || cleared.has(key) || !postings.some(({ account }) => account === 'bank');

function paragraph(
  transaction: Transaction,
  accounts: AccountNames,
  car: JournalCar | undefined,
  cleared: boolean,
): string {
  const { date, text, postings, corrects, payee, number } = transaction;
  const tags = [
    ...(car?.vin ? [`vin: ${inTag(car.vin)}`] : []),
    ...(car?.lotNumber ? [`lot: ${inTag(car.lotNumber)}`] : []),
    ...(payee ? [`vendor: ${inTag(payee)}`] : []),
    ...(number ? [`number: ${inTag(number)}`] : []),
    ...(corrects === undefined ? [] : [`corrects: ${corrects}`]),
  ];
  const notes = tags.map((tag) => `    ; ${tag}\n`).join('');
  const width = Math.max(...postings.map(({ account }) => accounts[account].length));
  const lines = [...postings]
    .sort((a, b) => b.cents - a.cents)
    .map(({ account, cents }) => `    ${accounts[account].padEnd(width)}  ${dollars(cents).padStart(14)}\n`);
  // What stands in parentheses is the code of the transaction: the number of its check or bill.
  const code = number ? `(${inLine(number).replace(/[()]/g, '')}) ` : '';
  return `${date} ${cleared ? '* ' : ''}${code}${description(text)}\n${notes}${lines.join('')}`;
}

/** "$1234.50", "$-1234.50": no thousands separator, so that no tool has to guess. */
const dollars = (cents: number): string => {
  const size = Math.abs(cents);
  return `$${cents < 0 ? '-' : ''}${Math.floor(size / 100)}.${String(size % 100).padStart(2, '0')}`;
};

/** A status or a code could stand at the beginning; words that begin like one get a dash in front. */
const description = (text: string): string => inLine(text).replace(/^[*!(=]/, '- $&');

/** Words of a bill must not end the line, begin a comment, or stand for a payee and a note. */
const inLine = (text: string): string =>
  text
    .replace(/[\p{C}\s]+/gu, ' ')
    .replaceAll(';', ',')
    .replaceAll('|', '/')
    .trim();

const inTag = (text: string): string => inLine(text).replaceAll(',', ' ').replaceAll(':', ' ');
