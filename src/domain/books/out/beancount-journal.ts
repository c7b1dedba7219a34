import type { AccountNames } from '../../accounts/accounts.ts';
import type { LotId } from '../../lot/lot.ts';
import { type Outcome, ok, refuse } from '../../outcome.ts';
import type { Transaction } from '../post/transaction.ts';
import type { JournalCar, JournalHead } from './plain-text-journal.ts';

const ROOTS = ['Assets', 'Liabilities', 'Equity', 'Income', 'Expenses'];

/**
 * The same transactions in the syntax of beancount, which is stricter about accounts: each must begin with one of five
 * words and have parts that begin with a capital letter or a digit. Blanks and other marks in a part become hyphens.
 * Refused when an account begins otherwise, with the name of it.
 */
export function beancountJournal(
  transactions: readonly Transaction[],
  accounts: AccountNames,
  cars: ReadonlyMap<LotId, JournalCar>,
  head: JournalHead,
): Outcome<string> {
  const names = new Map(Object.entries(accounts).map(([key, name]) => [key, beancountName(name)]));
  const wrong = Object.values(accounts).find(
    (name) => !ROOTS.includes(name.split(':')[0] ?? '') || !name.includes(':'),
  );
  if (wrong !== undefined) {
    return refuse(
      'account-root',
      `In this format the account “${wrong}” must begin with ${ROOTS.join(', ')} and a colon. Rename it under Setup, or use the other format.`,
    );
  }
  const opened = transactions.map(({ date }) => date).sort()[0] ?? '2000-01-01';
  const opens = [...new Set(names.values())].map((name) => `${opened} open ${name} USD\n`);
  const paragraphs = transactions.map((transaction) => {
    const car = cars.get(transaction.lot);
    const tags = [
      ...(car?.vin ? [`  vin: ${quoted(car.vin)}\n`] : []),
      ...(car?.lotNumber ? [`  lot: ${quoted(car.lotNumber)}\n`] : []),
      ...(transaction.number ? [`  number: ${quoted(transaction.number)}\n`] : []),
      ...(transaction.corrects === undefined ? [] : [`  corrects: ${quoted(transaction.corrects)}\n`]),
    ];
    const lines = [...transaction.postings]
      .sort((a, b) => b.cents - a.cents)
      .map(({ account, cents }) => `  ${names.get(account)}  ${dollars(cents)} USD\n`);
    const payee = transaction.payee ? `${quoted(transaction.payee)} ` : '';
    return `\n${transaction.date} * ${payee}${quoted(transaction.text)}\n${tags.join('')}${lines.join('')}`;
  });
  return ok(
    [
      `; ${inLine(head.title)}\n; US dollars; days in the store's own zone, ${inLine(head.zone)}\n\n`,
      'option "operating_currency" "USD"\n\n',
      ...opens,
      ...paragraphs,
    ].join(''),
  );
}

const beancountName = (name: string): string =>
  name
    .split(':')
    .map((part) => part.replace(/[^\p{L}\p{N}-]+/gu, '-').replace(/^\p{Ll}/u, (letter) => letter.toUpperCase()))
    .join(':');

const quoted = (text: string): string => `"${inLine(text).replaceAll('\\', '/').replaceAll('"', '’')}"`;

const inLine = (text: string): string => text.replace(/[\p{C}\s]+/gu, ' ').trim();

const dollars = (cents: number): string =>
  `${cents < 0 ? '-' : ''}${Math.floor(Math.abs(cents) / 100)}.${String(Math.abs(cents) % 100).padStart(2, '0')}`;
