import type { LineChange } from '../../domain/books/booking.ts';
import { PAPER_WORDS } from '../../domain/books/folder/missing-papers.ts';
import { monthInWords } from '../../domain/books/month.ts';
import { type Cents, cents } from '../../domain/money/cents.ts';
import { formatMoney } from '../../domain/money/format-money.ts';
import { sayDate } from '../../domain/time/say-time.ts';
import type { BOOKS } from './books.ts';
import type { WordsFor } from './row.ts';

const SOLD = { retail: 'to a customer', business: 'to a business', wholesale: 'at wholesale' } as const;

/** What was booked, in plain words. */
export const BOOKS_WORDS: WordsFor<typeof BOOKS> = {
  'costs-booked': ({ lines, payee, paid, date }) =>
    `Bill recorded${from(payee)}: ${billed(lines)}, ${paid === 'owed' ? 'not paid yet' : 'paid'}, ${sayDate(date)}`,
  'invoice-confirmed': ({ costs, payments, payee, document: paper }) => {
    const paid = payments.map((one) => payment(one.cents));
    return `Recorded${from(payee)}${paper.file === undefined ? '' : `, ${paper.file}`}: ${[billed(costs), ...paid].filter(Boolean).join('; ')}`;
  },
  'payment-booked': ({ lines, payee, date }) =>
    `Recorded: ${lines.map((one) => payment(one.cents)).join(', ')}${payee === undefined ? '' : `, ${payee}`}, ${sayDate(date)}`,
  'line-corrected': ({ to }) => (to === null ? 'One line undone' : `One line corrected: ${changeWords(to).join(', ')}`),
  'settlement-booked': ({ label, cents: amount }) => `Recorded from a dispute: ${label}, ${credit(amount)}`,
  'floor-booked': ({ cents: amount, move, date }) =>
    `Recorded: ${move === 'draw' ? 'floor-plan advance' : 'floor-plan payoff'} of ${formatMoney(amount)}, ${sayDate(date)}`,
  'outcome-booked': ({ buyer, priceCents, date }) =>
    `Sold ${SOLD[buyer]} for ${formatMoney(priceCents)}, ${sayDate(date)}`,
  'paper-noted': ({ paper, date }) =>
    date === undefined
      ? `No longer in the folder: ${PAPER_WORDS[paper].toLowerCase()}`
      : `${PAPER_WORDS[paper]} in the folder, ${sayDate(date)}`,
  'invoice-mapped': () => 'Invoice columns of a venue saved',
  'bank-read': ({ account, lines, from, to }) =>
    `Bank statement read: ${account}, ${lines.length} lines, ${sayDate(from)} to ${sayDate(to)}`,
  'bank-matched': ({ matches }) =>
    `Matched with the bank: ${matches.length} ${matches.length === 1 ? 'payment' : 'payments'}`,
  'bank-parted': ({ lines }) =>
    `No longer matched with the bank: ${lines.length} ${lines.length === 1 ? 'line' : 'lines'}`,
  'bank-left-out': ({ lines, why }) =>
    `Bank ${lines.length === 1 ? 'line' : 'lines'} left out: ${lines.length}, ${why}`,
  'month-closed': ({ month, by }) => `${monthInWords(month)} was closed by ${by}`,
};

const changeWords = ({ label, cost, cents: amount, date, number }: LineChange): string[] =>
  [
    label,
    cost,
    amount === undefined ? undefined : credit(amount),
    date === undefined ? undefined : sayDate(date),
    number === undefined ? undefined : `no. ${number}`,
  ].flatMap((word) => word ?? []);
const from = (payee: string | undefined): string => (payee === undefined ? '' : ` from ${payee}`);
const credit = (amount: Cents): string =>
  amount < 0 ? `a credit of ${formatMoney(cents(-amount))}` : formatMoney(amount);
const billed = (lines: readonly { readonly label: string; readonly cents: Cents }[]): string =>
  lines.map(({ label, cents: amount }) => `${label} ${credit(amount)}`).join(', ');
const payment = (amount: Cents): string =>
  amount < 0 ? `refund of ${formatMoney(cents(-amount))}` : `paid ${formatMoney(amount)}`;
